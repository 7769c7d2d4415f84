package model

import "time"

// Centre is everything that a centre's folder says.
type Centre struct {
	Name     string
	House    House
	Today    Date // the folder's own "today", for demos; 0: the computer's
	WeighAge int  // days after a weighing on which the next is due; 0: not stated; it binds no plan
	Persons  []*Person
	Arenas   []*Arena
	Horses   []*Horse
	Pieces   []*Piece
	Chart    []*FitRow
	Riders   []*Rider
	Terms    []*Term
	Lessons  []*Lesson
	Bookings []*Booking
	Works    []*Work
	Notes    []*Note   // in the order of their numbers
	Posted   []*Posted // in the order of their versions
	Ridden   []*Ridden // in the order of their dates
}

// Location is the centre's time zone.
func (c *Centre) Location() *time.Location {
	if c.House.Zone != "" {
		if l, err := time.LoadLocation(c.House.Zone); err == nil {
			return l
		}
	}
	return time.Local
}
