// Package sheet turns a plan into what hangs on the tack room door.
//
// A sheet is made in two steps. The content says what is to be done, in the
// trade's words and with every time worked out ([Pull] makes a [PullList]). A
// layout only places it: [PullList.Text], [PullList.CSV], or JSON as the
// content's tags name it. All are pure functions: the same week, plan, date and
// stamp give the same bytes.
//
// A sheet names riders by first name and mark alone, and holds no weight, no
// surname and nothing of anybody's health.
package sheet
