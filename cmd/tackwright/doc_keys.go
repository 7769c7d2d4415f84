/*
# tackwright keys

tackwright keys [TABLE]

Prints the page of every table and key that a folder can have, as Markdown; or
one TABLE of it: horse, tack, lesson ...

Example:

	tackwright keys horse
*/
package main
