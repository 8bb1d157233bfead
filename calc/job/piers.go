package job

import "pierbook/calc/fault"

func (j *Job) pierNames() []string { return nil }

// CheckPiers reports what the job says about piers that the frame does not have.
func (j *Job) CheckPiers(names []string) fault.List { return fault.List{} }
