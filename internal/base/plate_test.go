package base_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/rod"
)

// input is an HE 200 B on 420x420x30 with four M24 4.6, on a block of concrete.
func input(b basis.Basis) *base.PlateInput {
	d := basis.Design{Basis: b, EC: basis.Recommended()}
	a := geom.Actions{N: -500e3, Mx: 90e6}
	thread, _ := material.ThreadByName("M24")
	steel, _ := material.RodSteelByName("ISO 898-1 4.6", 24)
	return &base.PlateInput{
		Plate: plate.Input{
			Design: d, Plate: geom.Plate{SizeX: 420, SizeY: 420, Thickness: 30, Steel: material.Steel{Fy: 235, Fu: 360}},
			Footprint: plate.Footprint{Shape: plate.ISection, SizeX: 200, SizeY: 200, Thick: 15, Web: 9, Stiff: true, StiffStated: true},
			Actions:   a, WeldThroat: 6,
		},
		Support: bearing.Input{Design: d, SizeX: 420, SizeY: 420, Actions: a, Medium: bearing.Concrete,
			Block: bearing.Block{Concrete: material.Concrete{Strength: 20}, SizeX: 1420, SizeY: 1420, Height: 1000,
				GroutThick: 30, GroutStrength: 20}},
		HasRods: true,
		Rod:     rod.Rod{Thread: thread, Steel: steel, Making: rod.Standard},
		At:      []geom.Point{{X: -120, Y: 160}, {X: 120, Y: 160}, {X: -120, Y: -160}, {X: 120, Y: -160}},
		Holes:   rod.Holes{Diameter: 26, WasherThickness: 8},
	}
}

func TestPlateTakesItsStrengthsFromTheParts(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := input(b)
		r, err := base.CheckPlate(in)
		require.NoError(t, err)

		s, err := bearing.Available(&in.Support)
		require.NoError(t, err)
		rods := rod.Input{Design: in.Plate.Design, Plate: in.Plate.Plate, Rod: in.Rod, At: in.At, Holes: in.Holes}
		rr, err := rod.Check(&rods)
		require.NoError(t, err)
		alone := in.Plate
		alone.Bearing = plate.Bearing{Pressure: s.Pressure, Clause: s.Clause, GroutThick: 30}
		alone.Rods = plate.Rods{At: in.At, Resistance: rr.FtRd, Diameter: 24, StressArea: rr.As, Washer: 8}
		p, err := plate.Check(&alone)
		require.NoError(t, err)

		var together, apart limit.List
		r.States(&together)
		p.States(&apart)
		clauses := func(l *limit.List) (out []limit.State) {
			for _, s := range l.All() {
				if !strings.HasPrefix(s.Kind.ID, "plate_section") { // these need the contact
					out = append(out, s)
				}
			}
			return out
		}
		assert.Equal(t, clauses(&apart), clauses(&together))
		assert.NotEqual(t, limit.OutOfScope, together.Verdict())

		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps))
		var notices limit.Notices
		r.Notices(&notices)
		assert.NotEmpty(t, notices.All())
	}
}

func TestPlateNamesEveryFaultOnce(t *testing.T) {
	in := input(basis.Eurocode)
	in.Plate.Plate.SizeX, in.Support.SizeX = -1, -1
	in.Support.Block.Height = 0
	in.Holes.Diameter = 20
	in.Plate.Footprint.Thick = 120
	_, err := base.CheckPlate(in)
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	fields := map[string]int{}
	for _, f := range faults {
		fields[f.Field]++
	}
	for _, want := range []string{"plate.size_x_mm", "support.concrete.height_mm", "rods.holes.diameter_mm", "footprint.i_section.flange_mm"} {
		assert.Equal(t, 1, fields[want], want)
	}
	assert.NotContains(t, fields, "contact.size_x_mm")
}

func TestPlateOnGroutOutsideTheConditionsIsOutOfScope(t *testing.T) {
	in := input(basis.Eurocode)
	in.Support.Block.GroutThick = 100
	_, err := base.CheckPlate(in)
	var scope *limit.Scope
	require.True(t, errors.As(err, &scope))
	assert.NotEmpty(t, scope.Reason)
}
