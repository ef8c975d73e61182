package api_test

import (
	"fmt"
	"strings"
	"testing"

	"buf.build/go/protoyaml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// rods returns four rods at x and y from the middle both ways.
func cornerRods(x, y float64) string {
	return fmt.Sprintf("[{x_mm: %g, y_mm: %g}, {x_mm: -%g, y_mm: %g}, {x_mm: %g, y_mm: -%g}, {x_mm: -%g, y_mm: -%g}]", x, y, x, y, x, y, x, y)
}

// plateAt returns a plate on a given pressure of 10 MPa.
func plateAt(basis string, x, y, t float64, footprint, forces, rods string) string {
	return fmt.Sprintf(`
basis: {%s: {}}
plate: {size_x_mm: %g, size_y_mm: %g, thickness_mm: %g, steel: {properties: {fy_mpa: 235, fu_mpa: 360}}}
footprint: {%s, stiffness: FOOTPRINT_STIFFNESS_STIFF}
footprint_weld_throat_mm: 4
forces: {%s}
support:
  given: {pressure_kpa: 10000, source: "test", medium: GIVEN_MEDIUM_OTHER}
rods:
  rod:
    thread: {designation: M20}
    steel: {properties: {fy_mpa: 640, fu_mpa: 800}}
    thread_making: THREAD_MAKING_STANDARD
  positions: %s
  holes: {diameter_mm: 22}
`, basis, x, y, t, footprint, forces, rods)
}

func bent(t *testing.T, text string) *footwardv1.CheckResult {
	t.Helper()
	m := &footwardv1.CheckPlateBendingRequest{}
	require.NoError(t, protoyaml.Unmarshal([]byte(text), m))
	r, err := service(t).CheckPlateBending(t.Context(), m)
	require.NoError(t, err)
	return r.GetResult()
}

var families = []string{"eurocode", "us_lrfd", "us_asd"}

// TestEveryStiffFootprintGetsAnAnswer holds two moments, corner rods and odd
// footprints: a little passes, much more fails, and neither is out of scope.
func TestEveryStiffFootprintGetsAnAnswer(t *testing.T) {
	for _, basis := range families {
		for _, footprint := range []string{
			"i_section: {depth_mm: 200, width_mm: 200, flange_mm: 15, web_mm: 9}", "tube: {size_x_mm: 136, size_y_mm: 136, wall_mm: 8}",
			"pipe: {diameter_mm: 168, wall_mm: 8}", "rectangle: {size_x_mm: 160, size_y_mm: 160}", "two_plates: {gap_mm: 140, length_mm: 160, thickness_mm: 10}",
		} {
			for _, rods := range []string{
				cornerRods(150, 150), "[{x_mm: 150}, {x_mm: -150}, {y_mm: 150}, {y_mm: -150}]", "[{x_mm: 150, y_mm: 140}, {x_mm: -150, y_mm: 120}, {y_mm: -150}]",
			} {
				for _, forces := range []string{"n_kn: -50, m_x_knm: %g, m_y_knm: %g", "n_kn: 5, m_x_knm: %g, m_y_knm: %g"} {
					little := bent(t, plateAt(basis, 360, 360, 25, footprint, fmt.Sprintf(forces, 2.0, 1.0), rods))
					assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, little.GetVerdict(), "%s %s %s %s: %s", basis, footprint, rods, forces, little.GetReason())
					much := bent(t, plateAt(basis, 360, 360, 25, footprint, fmt.Sprintf(forces, 80.0, 60.0), rods))
					assert.Equal(t, footwardv1.Verdict_VERDICT_FAIL, much.GetVerdict(), "%s %s %s %s", basis, footprint, rods, forces)
				}
			}
		}
	}
}

// TestWeldOfASquareTubeDoesNotMatterForItsCornerRods holds that four rods about a box
// pass with and without a weld.
func TestWeldOfASquareTubeDoesNotMatterForItsCornerRods(t *testing.T) {
	for _, basis := range families {
		text := plateAt(basis, 360, 360, 15, "tube: {size_x_mm: 136, size_y_mm: 136, wall_mm: 8}", "n_kn: 5, m_y_knm: 3", cornerRods(150, 150))
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, bent(t, text).GetVerdict(), basis)
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, bent(t, strings.Replace(text, "throat_mm: 4", "throat_mm: 0", 1)).GetVerdict(), basis)
	}
}

// TestUpliftDoesNotDependOnTheNamesOfTheAxes turns a tube with rods outside both ways
// by 90 degrees.
func TestUpliftDoesNotDependOnTheNamesOfTheAxes(t *testing.T) {
	for _, basis := range families {
		a := bent(t, plateAt(basis, 520, 440, 20, "tube: {size_x_mm: 200, size_y_mm: 180, wall_mm: 8}", "n_kn: 20", cornerRods(200, 150)))
		b := bent(t, plateAt(basis, 440, 520, 20, "tube: {size_x_mm: 180, size_y_mm: 200, wall_mm: 8}", "n_kn: 20", cornerRods(150, 200)))
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, a.GetVerdict(), basis)
		assert.Equal(t, a.GetVerdict(), b.GetVerdict())
		assert.InEpsilon(t, a.GetGoverningUtilization(), b.GetGoverningUtilization(), 1e-2)
	}
}

// TestPinnedBaseHoldsUpliftByRodsBetweenItsFlanges holds the usual base with two rods
// beside the web: 20 kN of each, 70 mm off the web's middle, bends the plate over
// what 45 degrees reach: T/2 = 10 kN (United States).
func TestPinnedBaseHoldsUpliftByRodsBetweenItsFlanges(t *testing.T) {
	const section = "i_section: {depth_mm: 300, width_mm: 200, flange_mm: 15, web_mm: 9}"
	const rods = "[{x_mm: 70}, {x_mm: -70}]"
	for _, basis := range families {
		r := bent(t, plateAt(basis, 260, 340, 20, section, "n_kn: 40", rods))
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, r.GetVerdict(), "%s %s", basis, r.GetReason())
		for _, s := range r.GetLimitStates() {
			if s.GetId() == "plate_section_pulled" && basis == "us_lrfd" {
				assert.InEpsilon(t, 10e3/(0.9*235*100), s.GetUtilization(), 1e-3)
			}
		}
		assert.Equal(t, footwardv1.Verdict_VERDICT_FAIL, bent(t, plateAt(basis, 260, 340, 20, section, "n_kn: 400", rods)).GetVerdict(), basis)
	}
}

// tubeBase returns a column base of a tube with corner rods under moments about both
// axes.
func tubeBase(t *testing.T, basis string) *footwardv1.CheckColumnBaseRequest {
	t.Helper()
	text := plateAt(basis, 360, 360, 25, "tube: {size_x_mm: 136, size_y_mm: 136, wall_mm: 8}", "", cornerRods(150, 150))
	for _, cut := range []string{"forces: {}\n", "footprint_weld_throat_mm: 4\n", "basis: {" + basis + ": {}}\n"} {
		text = strings.Replace(text, cut, "", 1)
	}
	m := &footwardv1.CheckColumnBaseRequest{}
	require.NoError(t, protoyaml.Unmarshal([]byte("basis: {"+basis+": {}}\nbase:"+strings.ReplaceAll(text, "\n", "\n  ")+`
load_cases:
  cases:
    - {name: "wind", forces: {n_kn: -50, m_x_knm: 4, m_y_knm: 6}}
    - {name: "hardly", forces: {n_kn: -50, m_x_knm: 4, m_y_knm: 0.000001}}
    - {name: "lift", forces: {n_kn: 20, m_x_knm: 1, m_y_knm: 1}}
`), m))
	return m
}

func TestColumnBaseUnderTwoMomentsIsAnswered(t *testing.T) {
	for _, basis := range families {
		m := tubeBase(t, basis)
		r, err := service(t).CheckColumnBase(t.Context(), m)
		require.NoError(t, err)
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, r.GetResult().GetVerdict(), "%s %s", basis, r.GetResult().GetReason())

		// A soft bed gives the rods more, and the sections hold that.
		m.Base.Sharing = &footwardv1.ForceSharing{SubgradeModulusNMm3: 0.1}
		soft, err := service(t).CheckColumnBase(t.Context(), m)
		require.NoError(t, err)
		assert.Equal(t, footwardv1.Verdict_VERDICT_PASS, soft.GetResult().GetVerdict(), "%s %s", basis, soft.GetResult().GetReason())
		assert.Greater(t, used(soft.GetResult(), "plate_section_pulled"), 1.1*used(r.GetResult(), "plate_section_pulled"), basis)
	}
}

func used(r *footwardv1.CheckResult, id string) float64 {
	for _, s := range r.GetLimitStates() {
		if s.GetId() == id {
			return s.GetUtilization()
		}
	}
	return 0
}

// TestSizeFindsAPlateWithCornerRodsUnderTwoMoments offers rods at the corners and in
// the middle of the sides.
func TestSizeFindsAPlateWithCornerRodsUnderTwoMoments(t *testing.T) {
	for _, basis := range families {
		m := tubeBase(t, basis)
		plan := func(x float64, at ...*footwardv1.RodPosition) *footwardv1.PlatePlan {
			return &footwardv1.PlatePlan{SizeXMm: x, SizeYMm: x, Positions: at}
		}
		at := func(x, y float64) *footwardv1.RodPosition { return &footwardv1.RodPosition{XMm: x, YMm: y} }
		r, err := service(t).SizeColumnBase(t.Context(), &footwardv1.SizeColumnBaseRequest{
			Basis: m.GetBasis(), Exposure: m.GetExposure(), Base: m.GetBase(), Loads: &footwardv1.SizeColumnBaseRequest_LoadCases{LoadCases: m.GetLoadCases()},
			Offer: &footwardv1.SizeOffer{
				Plans:       []*footwardv1.PlatePlan{plan(300, at(120, 120), at(-120, 120), at(120, -120), at(-120, -120)), plan(360, at(150, 0), at(-150, 0), at(0, 150), at(0, -150))},
				ThicknessMm: []float64{10, 12, 15, 20, 25}, Rods: rodOffers("M16", "M20"),
			},
		})
		require.NoError(t, err, basis)
		require.True(t, r.GetFound(), basis)
		assert.NotEmpty(t, r.GetBest().GetGoverningLimitStateId(), basis)
	}
}
