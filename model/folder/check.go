package folder

func (r *reader) check() {}
