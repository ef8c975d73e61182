package base_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/rod"
	"footward.example/footward/internal/tie"
)

// anchorages are rods with heads in the support, and through a stack.
func anchorages() map[string]base.Anchorage {
	return map[string]base.Anchorage{
		"headed": {Kind: base.Headed, BlockOfSupport: true, Headed: anchor.Input{Embedment: 400, Head: anchor.Head{Diameter: 60, Thickness: 20}}},
		"through": {Kind: base.Through, Through: tie.Input{
			Plate:  geom.Plate{SizeX: 700, SizeY: 700, Thickness: 25, Steel: material.Steel{Fy: 235, Fu: 360}},
			PressX: 700, PressY: 700, Height: 900, Clamped: 50e3, Preload: 30e3, Settlement: 0.01, Share: 0.9,
		}},
	}
}

// TestColumnBaseEqualsItsAnchorage gives the forces of the sharing to the
// anchorage by itself.
func TestColumnBaseEqualsItsAnchorage(t *testing.T) {
	for name, held := range anchorages() {
		for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
			for _, a := range []geom.Actions{{N: 60e3, Vx: 10e3}, {N: -300e3, Mx: 90e6, Vy: 40e3}, {N: -500e3}} {
				in := column(b, a)
				in.Anchorage, in.Preload = held, 1e3
				r, got := check(t, in)

				rods := rod.Input{Design: in.Base.Plate.Design, Plate: in.Base.Plate.Plate, Rod: in.Base.Rod, At: in.Base.At, Holes: in.Base.Holes}
				share := geom.PointGroup(in.Base.At).Share(&geom.Actions{Vx: a.Vx, Vy: a.Vy})
				for i, at := range in.Base.At {
					f := rod.Force{Tension: r.Rows[0].Tensions[i]}
					f.ShearX, f.ShearY = share.Shear(at)
					rods.Each = append(rods.Each, f)
				}
				alone := base.AnchorageInput{Rods: rods, Stretch: 600, Anchorage: held}
				alone.Anchorage.Through.Needed, alone.Anchorage.Through.Held = 1e3, 30e3
				alone.Anchorage.Through.Load = max(0, -a.N)
				s := in.Base.Support.Block
				alone.Anchorage.BlockOfSupport = false
				alone.Anchorage.Headed.Under = anchor.Under{GroutThick: s.GroutThick, GroutStrength: s.GroutStrength}
				alone.Anchorage.Headed.Block = anchor.Block{Concrete: s.Concrete, SizeX: s.SizeX, SizeY: s.SizeY, Height: s.Height}
				own, err := base.CheckAnchorage(&alone)
				require.NoError(t, err)
				n := 0
				for id, w := range states(t, own) {
					// The weights hold against the actions of the foot, which rods alone do
					// not know.
					if id == "tie_uplift" || id == "tie_overturning" {
						assert.Contains(t, got, id)
						continue
					}
					if id == "anchor_rod_bending" {
						id = "rod_stand_off_stress" // the base has its rods' own check
					}
					n++
					assert.Equal(t, w.Verdict, got[id].Verdict, "%s %v %v %s", name, b, a, id)
					assert.InEpsilon(t, 1+w.Utilization, 1+got[id].Utilization, 1e-9, "%s %v %v %s", name, b, a, id)
				}
				assert.GreaterOrEqual(t, n, 4)
				for _, of := range []interface{ Derive(*derive.Sheet) }{own, r} {
					var sheet derive.Sheet
					of.Derive(&sheet)
					assert.NoError(t, derive.Verify(sheet.Steps))
				}
				var l limit.Notices
				r.Notices(&l)
				for _, x := range l.All() {
					assert.NotContains(t, []string{"base_anchorage_not_checked", "rods_anchorage_not_checked"}, x.Code)
				}
			}
		}
	}
}

func TestAnchorageOfAColumnNamesItsFaults(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*base.ColumnInput)
		want   []string
	}{
		{"no rods", func(in *base.ColumnInput) { in.Base.HasRods = false }, []string{"base.anchorage"}},
		{"no block", func(in *base.ColumnInput) {
			in.Base.Support.Medium = bearing.Given
			in.Base.Support.Given = bearing.GivenPressure{Pressure: 2, Source: "test"}
		}, []string{"base.anchorage.headed.block"}},
		{"too deep", func(in *base.ColumnInput) { in.Anchorage.Headed.Embedment = 5000 }, []string{"base.anchorage.headed.embedment_mm"}},
		{"through, no length", func(in *base.ColumnInput) { in.Anchorage, in.Base.Stretch = anchorages()["through"], 0 },
			[]string{"base.rods.rod.stretch_length_mm"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := column(basis.Eurocode, geom.Actions{N: -100e3})
			in.Anchorage = anchorages()["headed"]
			c.change(in)
			_, err := base.CheckColumn(in)
			var faults limit.Faults
			require.ErrorAs(t, err, &faults)
			var fields []string
			for _, f := range faults {
				fields = append(fields, f.Field)
			}
			assert.Equal(t, c.want, fields)
		})
	}
}

func TestAnchorageOfAPressedPlateIsOutOfScopeByItself(t *testing.T) {
	in := column(basis.Eurocode, geom.Actions{})
	alone := base.AnchorageInput{Stretch: 600, Anchorage: anchorages()["through"], Rods: rod.Input{
		Design: in.Base.Plate.Design, Plate: in.Base.Plate.Plate, Rod: in.Base.Rod, At: in.Base.At, Holes: in.Base.Holes,
		Actions: geom.Actions{N: -100e3, Mx: 50e6},
	}}
	r, err := base.CheckAnchorage(&alone)
	require.NoError(t, err)
	s := states(t, r)
	assert.Equal(t, limit.OutOfScope, s["tie_plate_bending"].Verdict)
	assert.NotEmpty(t, s["tie_plate_bending"].Reason)
	_, err = base.CheckAnchorage(&base.AnchorageInput{Rods: alone.Rods})
	assert.ErrorContains(t, err, "headed or through")
}
