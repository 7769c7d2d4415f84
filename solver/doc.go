// Package solver finds the best plan of a week: it encodes the rules and goals
// of [tackwright/model] as clauses, proves the goals in order and settles which
// tagged piece goes where.
//
// No plan leaves it unaudited, and its score is what is claimed.
package solver
