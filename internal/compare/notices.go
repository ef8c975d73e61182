package compare

import "footward.example/footward/internal/limit"

// The notices, in the order of an answer.
var (
	same = &limit.Notice{Code: "compare_same_function", Severity: limit.Assumption,
		Text: "Footings compare only if each was checked for the same loads, ground, settlement and design life; quantities say nothing of that."}
	leftOut = &limit.Notice{Code: "compare_left_out", Severity: limit.Caution,
		Text: "Left out: maintenance and replacement within the design life, demolition, disposal and reuse at the end of life, supervision, plant on site unless given, waste of material, taxes."}
	partial = &limit.Notice{Code: "compare_partial_total", Severity: limit.Caution,
		Text: "A total lacks rows without a rate or a quantity: it is partial, and no difference or ratio is taken of it."}
	transport = &limit.Notice{Code: "compare_transport_not_given", Severity: limit.Caution,
		Text: "Transport is not, or not wholly, part of the totals: it needs a rate for each tonne and kilometre, and a distance for each kind."}
	stand = &limit.Notice{Code: "compare_default_carbon", Severity: limit.Caution,
		Text: "Rates of carbon not given were taken from a database of 2011 and not compared with its printed edition: compare them, and use declarations of your own products where you can."}
	before = &limit.Notice{Code: "compare_reused_cut_off", Severity: limit.Assumption,
		Text: "Reused rings carry no carbon of their first life (cut-off rule of EN 15804); another rule of sharing gives another answer."}
	tyres = &limit.Notice{Code: "compare_worn_tyres", Severity: limit.Caution,
		Text: "Worn tyres may be waste by law, and using them in the ground may need a permit; what they give off to water (zinc among others) and who takes them back at the end are not counted. Common knowledge of the trade, no source: ask the authority."}
	density = &limit.Notice{Code: "compare_quantities", Severity: limit.Info,
		Text: "Steel counts 7850 kg/m3; holes, and bars in concrete, are not taken off. Soil put back is taken as dense as it was."}
)

// Remarks returns the notices of the package in order.
func Remarks() []*limit.Notice {
	return []*limit.Notice{same, leftOut, partial, transport, stand, before, tyres, density}
}

// Notices appends the notices.
func (r *Result) Notices(l *limit.Notices) {
	var some struct{ partial, transport, stand, before, tyres bool }
	for i := range r.Answers {
		t := &r.Answers[i].Totals
		some.partial = some.partial || t.Mass.Partial || t.Volume.Partial || t.Cost.Partial || t.Hours.Partial || t.Carbon.Partial
		some.transport = some.transport || t.HaulCarbon.Partial || t.HaulCost.Partial
		for j := range r.Answers[i].Rows {
			row := &r.Answers[i].Rows[j]
			some.stand = some.stand || row.Carbon.Default && row.Item.Kind != ReusedRing
			some.before = some.before || row.Carbon.Default && row.Item.Kind == ReusedRing
			some.tyres = some.tyres || row.Item.Tyre
		}
	}
	l.Add(same)
	l.Add(leftOut)
	for _, n := range [...]struct {
		is     bool
		notice *limit.Notice
	}{{some.partial, partial}, {some.transport, transport}, {some.stand, stand}, {some.before, before}, {some.tyres, tyres}} {
		if n.is {
			l.Add(n.notice)
		}
	}
	l.Add(density)
}
