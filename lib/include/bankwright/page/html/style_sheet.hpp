// How does the page look? Large and dark on white, for a phone in the sun; one column from 360 px on; on paper (A4 and
// Letter) in black with boxes to tick and to write into. What the findings' colors say is said by shape and word too.
#pragma once

#include <string_view>

namespace bankwright::page {

// It stands inside XML as well as HTML: no quotes, no angle brackets, no ampersands.
inline constexpr std::string_view style_sheet = R"(
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0; background: #fff; color: #111; overflow-wrap: anywhere;
  font: 1.125rem/1.45 system-ui, Roboto, Segoe UI, Helvetica, Arial, sans-serif; }
header, main, footer { max-width: 100rem; margin: 0 auto; padding: 0 1rem; }
section, nav, header h1, header p, footer p { max-width: 62rem; margin-left: auto; margin-right: auto; }
section.drawing { max-width: none; }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 1rem 0 0.25rem; }
h2 { font-size: 1.4rem; line-height: 1.25; margin: 2.5rem 0 0.75rem; padding-top: 0.5rem; border-top: 4px solid #111; }
h3 { font-size: 1.15rem; line-height: 1.3; margin: 1.5rem 0 0.5rem; }
p, ul, ol, dl, figure { margin: 0.5rem 0; }
ul { padding-left: 1.4rem; }
li { margin: 0.25rem 0; }
a { color: #0a3d91; }
.name { font-weight: 700; }
.faint { color: #444; }
.small { font-size: 1rem; }
nav ul { list-style: none; margin: 1rem 0 0; padding: 0; display: flex; flex-wrap: wrap; gap: 0.5rem; }
nav li { margin: 0; }
nav a { display: block; padding: 0.45rem 0.8rem; border: 2px solid #0a3d91; border-radius: 0.4rem; text-decoration: none; }
.verdict { display: flex; gap: 1rem; align-items: center; padding: 1rem; border: 4px solid #111; border-radius: 0.5rem; }
.verdict svg { flex: none; width: 4rem; height: 4rem; padding: 0.2rem; background: #fff; border-radius: 0.4rem; }
.verdict p { margin: 0.25rem 0 0; }
.verdict h2 { font-size: 1.6rem; margin: 0; padding: 0; border: 0; }
.verdict.error { background: #a4001d; color: #fff; border-color: #a4001d; }
.verdict.warning { background: #ffd86b; }
.verdict.fine { background: #fff; border-color: #0b5d33; }
.figures { display: grid; grid-template-columns: repeat(auto-fit, minmax(9rem, 1fr)); gap: 0.75rem; }
.figures div { border: 2px solid #767676; border-radius: 0.4rem; padding: 0.5rem 0.75rem; }
.figures dd { margin: 0; font-size: 1.25rem; font-weight: 700; line-height: 1.25; }
.figures dt { font-size: 1rem; color: #333; }
.finding { border: 2px solid #767676; border-left: 0.8rem solid #111; border-radius: 0.4rem; padding: 0.5rem 1rem;
  margin: 1rem 0; }
.finding.error { border-left-color: #a4001d; }
.finding.warning { border-left-color: #ffc533; border-left-style: double; }
.finding.note { border-left-color: #1f4e8c; border-left-style: dotted; }
.finding h3 { margin: 0; display: flex; gap: 0.5rem; align-items: center; }
.finding h3 svg { flex: none; width: 1.8rem; height: 1.8rem; }
.finding dt, .details dt { font-weight: 700; }
.finding dd, .details dd { margin: 0 0 0.4rem; }
.wide { overflow-x: auto; margin: 0.75rem 0; }
.wide:focus-visible, a:focus-visible, summary:focus-visible, input:focus-visible { outline: 4px solid #0a3d91; outline-offset: 2px; }
table { border-collapse: collapse; min-width: min(100%, 34rem); font-variant-numeric: tabular-nums; font-size: 1.05rem; line-height: 1.3; }
caption { text-align: left; font-weight: 700; padding: 0.25rem 0; }
th, td { text-align: left; vertical-align: bottom; padding: 0.35rem 0.5rem 0.35rem 0; border-bottom: 1px solid #767676;
  overflow-wrap: normal; }
thead th { border-bottom: 3px solid #111; }
tbody th { font-weight: 700; overflow-wrap: break-word; }
.number { text-align: right; }
td.number { white-space: nowrap; }
.number + td, .number + th { padding-left: 0.4rem; }
tr :last-child { padding-right: 0; }
tbody td, tbody th { vertical-align: top; }
.wiring { max-height: 85vh; overflow: auto; }
.wiring svg { display: block; height: auto; width: var(--width); }
.chart { max-width: 28rem; }
.chart svg { display: block; width: 100%; height: auto; }
figcaption { font-weight: 700; }
.cautions { border: 4px solid #a4001d; border-radius: 0.5rem; padding: 0.25rem 1rem; }
.steps { list-style: none; padding: 0; }
.steps li { border: 2px solid #767676; border-radius: 0.4rem; padding: 0.5rem 0.75rem; margin: 0.75rem 0; }
.steps li ul { margin-top: 0; }
.steps li li { border: 0; padding: 0; margin: 0.15rem 0; }
details.chapter { max-width: 62rem; margin: 0.75rem auto; border-top: 4px solid #111; }
summary { cursor: pointer; padding: 0.6rem 0; min-height: 2.75rem; color: #0a3d91; }
summary h2, summary h3 { display: inline; margin: 0; padding: 0; border: 0; color: #111; }
details.part { border: 2px solid #767676; border-radius: 0.4rem; padding: 0 0.75rem; margin: 0.6rem 0; }
details.part[open] { border-color: #0a3d91; }
.steps details.small summary { padding: 0.3rem 0; }
.read { margin: 0.25rem 0; padding-left: 0.6rem; border-left: 0.4rem solid #0b5d33; }
.read.stop { border-left: 0.4rem double #a4001d; }
.title { font-weight: 700; margin: 0.25rem 0; }
.tick { display: flex; gap: 0.75rem; align-items: center; font-weight: 700; min-height: 2.75rem; }
.tick input { flex: none; width: 1.9rem; height: 1.9rem; margin: 0; accent-color: #0a3d91; }
.reading { display: flex; flex-wrap: wrap; gap: 0.25rem 0.75rem; align-items: center; margin: 0.5rem 0 0.25rem; }
.reading span { flex: 1 1 14rem; }
.write { font: inherit; width: 8rem; min-height: 2.75rem; border: 2px solid #111; border-radius: 0.3rem; padding: 0.2rem 0.4rem;
  background: #fff; color: #111; }
.record { display: flex; flex-wrap: wrap; gap: 0.75rem; }
.record label { display: flex; flex-direction: column; font-weight: 700; }
.record .write { width: 15rem; max-width: 100%; }
footer { margin-top: 2.5rem; padding-bottom: 2rem; }
@media (min-width: 50rem) {
  th, td { padding-right: 1rem; }
  .wiring { max-height: none; }
  .wiring svg { width: max(calc(var(--width) * 0.8), min(100%, calc(var(--width) * 1.3))); margin: 0 auto; } }
@page { margin: 14mm 12mm; }
@page drawing { size: landscape; margin: 10mm; }
@page upright { margin: 10mm; }
@media print {
  body { font-size: 10.5pt; line-height: 1.35; }
  header, main, footer { max-width: none; padding: 0; }
  h1 { font-size: 16pt; } h2 { font-size: 13.5pt; margin-top: 14pt; } h3 { font-size: 11.5pt; }
  nav { display: none; }
  details::details-content { content-visibility: visible; display: block; }
  summary { list-style: none; color: #111; padding: 0; min-height: 0; break-after: avoid; }
  summary::-webkit-details-marker { display: none; }
  details.chapter { margin: 14pt 0 0; } details.part { border: 0; padding: 0; margin: 10pt 0; }
  a { color: #111; text-decoration: none; }
  h2, h3, caption, figcaption, thead { break-after: avoid; }
  .finding, .figures div, .steps li, figure, tr, .verdict, .cautions { break-inside: avoid; }
  table, .small { font-size: 9.5pt; }
  .wide { overflow: visible; max-height: none; }
  td.number { white-space: normal; }
  thead th, tbody th, tbody td { overflow-wrap: anywhere; }
  .hint { display: none; }
  .drawing { page: drawing; break-before: page; break-after: page; }
  .drawing.upright { page: upright; }
  .drawing h2 { margin-top: 0; }
  .sheet { break-before: page; }
  .wiring svg { width: 100%; max-height: 165mm; }
  .upright .wiring svg { max-height: 235mm; }
  .verdict, .finding { print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  .chart { max-width: 90mm; break-before: avoid; }
  .tick { min-height: 0; } .tick input { width: 5mm; height: 5mm; }
  .write { min-height: 7mm; width: 26mm; } .record .write { width: 55mm; }
}
)";

} // namespace bankwright::page
