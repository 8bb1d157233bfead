package job

func (j *Job) check(r *reader) {}
