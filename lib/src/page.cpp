// The compiled twin of page/.
#include "bankwright/page/bank_report_inl.hpp"
#include "bankwright/page/chart_inl.hpp"
#include "bankwright/page/sentences_inl.hpp"
#include "bankwright/page/to_html_inl.hpp"
