package frame

func (l *layout) surface()  {}
func (l *layout) blocking() {}
func (l *layout) savings()  {}
