package job_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"pierbook/calc/figure"
	"pierbook/calc/job"
	"pierbook/calc/measure"
)

func TestShopLiesUnderTheJob(t *testing.T) {
	j := read(t, "job.yaml", dozen+"shop: lib/shop.yaml\nstone: {waste: 5%}\n",
		"lib/shop.yaml", "shop: base.yaml\nclient: the shop\nstone: {waste: 9%, margin: 5\"}\npages: own-pages\n",
		"lib/base.yaml", "client: the base\naddress: Mill Lane\nstone: {embed: 1\"}\ncrew: {people: 4}\n")
	assert.Equal(t, "the shop", j.Client, "the nearer shop wins")
	assert.Equal(t, "Mill Lane", j.Address)
	assert.InDelta(t, 0.05, float64(j.Stone.Waste), 1e-12)
	assert.Equal(t, 5*measure.Inch, j.Stone.Margin)
	assert.Equal(t, measure.Inch, j.Stone.Embed)
	assert.Equal(t, 1, j.Crew.People)
	assert.Equal(t, "lib/own-pages", j.Pages, "a path counts from the file that names it")

	entry, _ := j.Entry("stone.margin")
	assert.Equal(t, figure.Shop, entry.Origin)
	assert.Equal(t, "lib/shop.yaml:3:28", entry.At.String())
	entry, _ = j.Entry("stone.waste")
	assert.Equal(t, figure.Given, entry.Origin)
	assert.Equal(t, "job.yaml:14:16", j.At("stone.waste").String())
	assert.Equal(t, "job.yaml:14:1", j.At("stone.most").String(), "a default points at the map around it")
	assert.Equal(t, "job.yaml", j.At("dig.least").String())
}

func TestShopAndYardWrittenInsideTheJob(t *testing.T) {
	j := read(t, "job.yaml", dozen+"shop: {client: us, yard: more.yaml}\nyard: {kerf: 1/4\"}\n", "more.yaml", "payload: 900 lb\n")
	assert.Equal(t, "us", j.Client)
	assert.Equal(t, measure.Inch/4, j.Yard.Kerf)
	assert.InDelta(t, 408.2, float64(j.Yard.Payload), 0.1)
	entry, _ := j.Entry("client")
	assert.Equal(t, figure.Shop, entry.Origin)
}

func TestListsAndValuesReplaceAndNoneRemoves(t *testing.T) {
	j := read(t, "job.yaml", dozen+"shop: shop.yaml\nclient: none\nbuilding: none\naddress: 'none'\nyard: {on_hand: {4x4: [2']}, prices: {cap: none}}\n",
		"shop.yaml", "client: somebody\nbuilding: {wall_height: 6'}\nyard: {on_hand: {4x4: [31\", 30\"]}, prices: {cap: 3, block: 9}}\n")
	assert.Empty(t, j.Client)
	assert.Nil(t, j.Building)
	assert.Equal(t, "none", j.Address, "in quotes it is a word like any other")
	assert.Equal(t, []measure.Length{2 * measure.Foot}, j.Yard.OnHand["4x4"])
	assert.Equal(t, map[string]measure.Money{"block": 9}, j.Yard.Prices)
}

func TestFilesThatCannotBeJoined(t *testing.T) {
	for _, row := range []struct {
		name, want string
		more       []string
		line       string
	}{
		{"missing", `job.yaml:13:7: shop: there is no file "shop.yaml" beside this one`, nil, "shop: shop.yaml"},
		{"outside", `job.yaml:13:7: shop: "../shop.yaml" leads out of the folder of the job`, nil, "shop: ../shop.yaml"},
		{"absolute", `job.yaml:13:7: yard: "/etc/passwd" leads out of the folder of the job`, nil, "yard: /etc/passwd"},
		{"drive", `job.yaml:13:7: yard: "C:\\yard.yaml" leads out of the folder of the job`, nil, `yard: C:\yard.yaml`},
		{"itself", "job.yaml:13:7: shop: the files go round in a circle: job.yaml names job.yaml", nil, "shop: job.yaml"},
		{"circle", "b.yaml:1:7: shop: the files go round in a circle: job.yaml names a.yaml names b.yaml names a.yaml",
			[]string{"a.yaml", "shop: b.yaml\n", "b.yaml", "shop: a.yaml\n"}, "shop: a.yaml"},
		{"fault in the shop", `shop.yaml:2:16: dig.least: "4" has no unit`, []string{"shop.yaml", "client: x\ndig:   {least: 4}\n"}, "shop: shop.yaml"},
		{"fault in the yard", `yard.yaml:1:7: yard.kerf: "wide" is not a length`, []string{"yard.yaml", "kerf: wide\n"}, "yard: yard.yaml"},
		{"unknown key in the yard", `yard.yaml:1:1: yard: "karf" is not a key here`, []string{"yard.yaml", "karf: 1/8\"\n"}, "yard: yard.yaml"},
		{"this folder", `job.yaml:13:7: shop: "." leads out of the folder of the job`, nil, "shop: ."},
		{"empty shop", "shop.yaml: the file is empty", []string{"shop.yaml", ""}, "shop: shop.yaml"},
		{"broken shop", "shop.yaml:1:9: a value cannot begin with @", []string{"shop.yaml", "client: @us\n"}, "shop: shop.yaml"},
		{"list for a shop", "job.yaml:13:7: shop: shop is a list", nil, "shop: [a, b]"},
		{"folder for a shop", `job.yaml:13:7: shop: there is no file "lib" beside this one`, []string{"lib/x.yaml", ""}, "shop: lib"},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := faultsOf(t, append([]string{"job.yaml", dozen + row.line + "\n"}, row.more...)...)
			assert.Contains(t, got, row.want+"\n")
		})
	}
}

func TestPiersAreCheckedOnceTheFrameIsKnown(t *testing.T) {
	j := read(t, "job.yaml", dozen+"frame: {piers: {spacing: 5'}}\nground: {probes: {B3: {depth: 9\", found: firm}, B4: {depth: 9\", found: rock}}}\n")
	names := []string{"A1", "A2", "A3", "B1", "B2", "B3", "C1", "C2", "C3"}
	faults := j.CheckPiers(names)
	assert.Equal(t, `job.yaml:14:49: ground.probes.B4: "B4" is not a pier of this frame
  14 | ground: {probes: {B3: {depth: 9", found: firm}, B4: {depth: 9", found: rock}}}
     |                                                 ^^
  the piers run from A1 to C3
`, printed(faults))
	_, wrong := job.Read(files("job.yaml", dozen+"ground: {probes: {A9: {depth: 9\", found: firm}}}\n"), "job.yaml")
	require.False(t, wrong.Empty(), "with piers counted in the file it is done while reading")
}
