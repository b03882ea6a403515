// The bodies of page/, built once. Written by tests/structure/make_umbrella.py.
#include "bankwright/page/bank_report_inl.hpp"
#include "bankwright/page/comparison_page_inl.hpp"
#include "bankwright/page/label_sheets_inl.hpp"
#include "bankwright/page/to_html_inl.hpp"
