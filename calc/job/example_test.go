package job_test

import (
	"fmt"
	"os"
	"testing/fstest"

	"pierbook/calc/job"
)

func ExampleRead() {
	fsys := fstest.MapFS{"shed.yaml": {Data: []byte(`name: Garden shed
platform: {length: 10', width: 8', use: shed}
timber: {species: hem_fir, grade: No.2}
site: {soil: {class: silty_sand}}
`)}}
	j, faults := job.Read(fsys, "shed.yaml")
	faults.Print(os.Stdout)
	fmt.Println(j.Name, "goes to the folder", j.Slug())
	bearing, _ := j.Entry("site.soil.bearing")
	fmt.Println(bearing.Means+":", bearing.Text, "("+bearing.Origin+")")
	// Output:
	// Garden shed goes to the folder garden-shed
	// pressure the soil may carry: 2000 psf (assumed)
}
