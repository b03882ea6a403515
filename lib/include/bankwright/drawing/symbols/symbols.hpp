// The symbols of IEC 60617 (from memory) that a bank needs, drawn between the two leads of a part or around its middle.
#pragma once

#include "bankwright/drawing/pen.hpp"
#include "bankwright/linkage.hpp"

namespace bankwright::drawing::symbols {

void polarity(Pen& pen, Point middle, bool plus, double reach); // white on a post
void cell(Pen& pen, Point middle, bool turned);                 // the long line on the side of the positive post
void fuse(Pen& pen, Point left, Point right, bool whole);
void breaker(Pen& pen, Point left, Point right, bool closed);
void disconnector(Pen& pen, Point left, Point right, bool closed);                // a plain switch
void socket_and_plug(Pen& pen, Point left, Point right, bool turned, bool mated); // one pole; turned: plug on the left
void motor(Pen& pen, Point middle);                                               // of direct current
void resistor(Pen& pen, Point middle);                                            // any load
void rectifier(Pen& pen, Point middle); // a charger: from alternating to direct current

} // namespace bankwright::drawing::symbols

#if BANKWRIGHT_HEADER_ONLY
#include "bankwright/drawing/symbols/symbols_inl.hpp"
#endif
