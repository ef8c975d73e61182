package plate_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/plate"
)

// draw draws a plate that is valid, under any actions of usual size.
func draw(t *rapid.T) *plate.Input {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	in := &plate.Input{Design: basis.Design{EC: basis.Recommended()}}
	in.Design.Basis = rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis")
	in.Plate = geom.Plate{SizeX: number("B", 200, 900), SizeY: number("L", 200, 900), Thickness: number("t", 5, 80),
		Steel: material.Steel{Fy: number("fy", 200, 500), Fu: 600}}
	f := &in.Footprint
	f.Shape = rapid.SampledFrom([]plate.Shape{plate.ISection, plate.Tube, plate.Pipe, plate.Rectangle, plate.TwoPlates}).Draw(t, "shape")
	f.SizeX, f.SizeY = in.Plate.SizeX*number("b", 0.2, 1), in.Plate.SizeY*number("h", 0.2, 1)
	if f.Shape == plate.Pipe {
		f.SizeX = min(f.SizeX, f.SizeY)
		f.SizeY = f.SizeX
	}
	f.Thick, f.Web = number("tf", 1, 18), number("tw", 1, 18)
	f.Stiff = rapid.Bool().Draw(t, "stiff")
	in.Bearing.Pressure = number("pressure", 0.1, 40)
	in.Actions.N = number("N", -2e6, 1e6)
	if rapid.Bool().Draw(t, "moment") {
		in.Actions.Mx = number("Mx", -2e8, 2e8)
	} else {
		in.Actions.My = number("My", -2e8, 2e8)
	}
	if rapid.Bool().Draw(t, "rods") {
		x, y := in.Plate.SizeX*number("x", 0.1, 0.49), in.Plate.SizeY*number("y", 0.1, 0.49)
		in.Rods = plate.Rods{At: []geom.Point{{X: x, Y: y}, {X: -x, Y: y}, {X: x, Y: -y}, {X: -x, Y: -y}},
			Resistance: number("FtRd", 1e4, 5e5), Diameter: 24, StressArea: 353, Stretch: number("Lb", 0, 2000)}
		in.WeldThroat = number("aw", 0, 10)
	}
	unclashed(t, in)
	return in
}

// unclashed skips plates whose rods pass through the steel that stands on them.
func unclashed(t *rapid.T, in *plate.Input) {
	var faults limit.Faults
	if plate.Validate(in, &faults); len(faults) > 0 {
		t.Skip("rods pass through the footprint")
	}
}

func states(t *rapid.T, in *plate.Input) []limit.State {
	r, err := plate.Check(in)
	if err != nil {
		t.Fatal(err)
	}
	var l limit.List
	r.States(&l)
	return append([]limit.State(nil), l.All()...)
}

func TestThickerPlateNeverHoldsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		thick := *in
		thick.Plate.Thickness *= rapid.Float64Range(1, 2).Draw(t, "more")
		was, is := states(t, in), states(t, &thick)
		for i := range was {
			if was[i].Rated && is[i].Rated && is[i].Resistance < was[i].Resistance*(1-1e-9) {
				t.Fatalf("%s: %g, thicker %g", was[i].Kind.ID, was[i].Resistance, is[i].Resistance)
			}
		}
	})
}

// TestMirroredPlateAnswersTheSame turns the moment round: the plate and its
// rods are symmetrical.
func TestMirroredPlateAnswersTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		mirror := *in
		mirror.Actions.Mx, mirror.Actions.My = -in.Actions.Mx, -in.Actions.My
		same(t, states(t, in), states(t, &mirror))
	})
}

// TestTurnedPlateAnswersTheSame turns tubes, pipes and rectangles by a quarter.
func TestTurnedPlateAnswersTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		f := &in.Footprint
		if f.Shape == plate.ISection || f.Shape == plate.TwoPlates {
			f.Shape = plate.Tube
		}
		unclashed(t, in)
		turned := *in
		turned.Plate.SizeX, turned.Plate.SizeY = in.Plate.SizeY, in.Plate.SizeX
		turned.Footprint.SizeX, turned.Footprint.SizeY = f.SizeY, f.SizeX
		turned.Actions.Mx, turned.Actions.My = -in.Actions.My, in.Actions.Mx
		turned.Rods.At = nil
		for _, p := range in.Rods.At {
			turned.Rods.At = append(turned.Rods.At, geom.Point{X: -p.Y, Y: p.X})
		}
		same(t, states(t, in), states(t, &turned))
	})
}

func same(t *rapid.T, a, b []limit.State) {
	for i := range a {
		if a[i].Verdict != b[i].Verdict || !(math.Abs(a[i].Utilization-b[i].Utilization) <= 1e-9*(1+a[i].Utilization)) ||
			!(math.Abs(a[i].Required-b[i].Required) <= 1e-6*(1+a[i].Required)) {
			t.Fatalf("%+v differs from %+v", a[i], b[i])
		}
	}
}

// TestRequiredThicknessIsEnough puts the thickness asked for in.
func TestRequiredThicknessIsEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		for i, s := range states(t, in) {
			if s.Size != limit.PlateThickness || s.Required > 200 || s.Required < 1 {
				continue
			}
			again := *in
			again.Plate.Thickness = s.Required
			if then := states(t, &again)[i]; then.Rated && !(then.Utilization <= 1+1e-9) {
				t.Fatalf("%s: %g mm has %g", s.Kind.ID, s.Required, then.Utilization)
			}
			if s.Verdict == limit.Pass && s.Required > in.Plate.Thickness*(1+1e-6) {
				t.Fatalf("%s passes at %g mm and asks for %g mm", s.Kind.ID, in.Plate.Thickness, s.Required)
			}
			if s.Verdict == limit.Fail && s.Required < in.Plate.Thickness*(1-1e-6) {
				t.Fatalf("%s fails at %g mm and asks for %g mm", s.Kind.ID, in.Plate.Thickness, s.Required)
			}
		}
	})
}

// TestLinearUnderCompression scales the load of plates that do not lift.
func TestLinearUnderCompression(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		in.Actions.N, in.Actions.Mx, in.Actions.My = -1e5, 0, 0
		in.Design.Basis = basis.Eurocode
		more := *in
		more.Actions.N *= 2
		a, b := states(t, in), states(t, &more)
		for i := range a {
			if a[i].Rated && !(math.Abs(2*a[i].Utilization-b[i].Utilization) <= 1e-9*b[i].Utilization) {
				t.Fatalf("%s: %g, twice the load %g", a[i].Kind.ID, a[i].Utilization, b[i].Utilization)
			}
		}
	})
}

// TestRodsAndSupportBalanceTheActions takes N and M about the column axis.
func TestRodsAndSupportBalanceTheActions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := draw(t)
		r, err := plate.Check(in)
		if err != nil || r.Case != plate.Uniaxial {
			return
		}
		balance := func(tension, compression, arm float64) {
			if n := tension - compression; !(math.Abs(n-r.N) <= 1e-6*(1+math.Abs(r.N)+compression)) {
				t.Fatalf("N %g, not %g", n, r.N)
			}
			m := tension*r.Row.S + compression*arm
			if !(math.Abs(m-r.M) <= 1e-6*(1+r.M+compression*in.Plate.SizeX)) {
				t.Fatalf("M %g, not %g", m, r.M)
			}
		}
		if r.EC.Lifted && r.EC.Pressed {
			balance(r.EC.Ft, r.EC.Fc, r.EC.Zc)
		}
		if r.US.Lifted && r.US.Fp > 0 && r.US.Tu > 0 {
			length := in.Plate.SizeX
			if in.Actions.Mx != 0 {
				length = in.Plate.SizeY
			}
			balance(r.US.Tu, r.US.Q*r.US.Y, length/2-r.US.Y/2)
		}
	})
}

func BenchmarkCheck(b *testing.B) {
	for _, c := range []struct {
		name   string
		basis  basis.Basis
		moment float64
	}{
		{"Eurocode/compression", basis.Eurocode, 0}, {"Eurocode/moment", basis.Eurocode, 92e6},
		{"LRFD/compression", basis.USLRFD, 0}, {"LRFD/moment", basis.USLRFD, 92e6},
	} {
		b.Run(c.name, func(b *testing.B) {
			in := wald()
			in.Design.Basis, in.Actions.N, in.Actions.Mx = c.basis, -500e3, c.moment
			var l limit.List
			l.NoSizes = true
			b.ReportAllocs()
			for b.Loop() {
				l.Reset()
				r, err := plate.Check(in)
				if err != nil {
					b.Fatal(err)
				}
				r.States(&l)
			}
			if l.Verdict() == limit.Unset {
				b.Fatal("nothing checked")
			}
		})
	}
}
