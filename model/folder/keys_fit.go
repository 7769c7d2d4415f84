package folder

import "tackwright/model"

var fitKeys = &table[model.FitRow]{
	head:  "[[fit]]",
	about: "A row of the fit chart: a saddle fitter or instructor has approved the seat for the horse, with these girths. No row, no fit.",
	keys: []key[model.FitRow]{
		is("horse", horse, "the horse", "", func(f *model.FitRow, v *model.Horse) { f.Horse = v }),
		is("seat", tack, "tag of the seat", "", func(f *model.FitRow, v *model.Piece) { f.Seat = v }),
		is("pads", list(tack, "a list of tags"), "pads beneath it, in order from the horse's back", "the horse's own pad, else the seat's, else a loose one", func(f *model.FitRow, v []*model.Piece) { f.Pads = v }).eg(`["P3"]`),
		is("pad_sizes", texts, "sizes of loose pads that fit", "any", func(f *model.FitRow, v []string) { f.PadSizes = v }).eg(`["full"]`),
		is("girth", girthSizes, "size, or range of sizes, of girths that fit", "only the girths named by tag", func(f *model.FitRow, v ends2[model.Label]) { f.GirthMin, f.GirthMax = v.lo, v.hi }),
		is("girths", list(tack, "a list of tags"), "girths that fit, by tag", "only those of the sizes named", func(f *model.FitRow, v []*model.Piece) { f.Girths = v }).eg(`["G4", "G7"]`),
		is("by", text, "who approved the fit", "unknown", func(f *model.FitRow, v string) { f.By = v }).eg(`"R. Holt, saddle fitter"`),
		is("approved", dates, "when it was approved", "long ago", func(f *model.FitRow, v model.Date) { f.Approved = v }),
		is("until", dates, "when it is to be checked again: the last date it holds", "unknown: nobody rides by it, unless fit dates are kept elsewhere", func(f *model.FitRow, v model.Date) { f.Until = v }),
	},
}
