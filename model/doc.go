// Package model holds the nouns of a riding centre, the rides of a week, the
// rules in words, the audit of a plan and its score.
//
// It knows no file and no solver: a [Centre] comes from whoever reads one, a
// [Plan] from whoever makes one, and [Week.Audit] judges the plan against the
// rules alone. Times are minutes of a local date in half-open spans; loads are
// grams; work factors whole percents: no rule needs floating point.
package model
