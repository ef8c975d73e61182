package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/reflect/protoreflect"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// perCall is how many checks go in one call: enough to be quick, few enough
// for the answers to stay far below the limit of a message.
const perCall = 100

// ask has every task answered that could be read, and returns what produced
// the answers. After an error the tasks from there on have no outcome.
func ask(ctx context.Context, c *client.Client, tasks []*task, o *checkOptions, stderr io.Writer) (*footwardv1.Provenance, error) {
	var readable []*task
	for _, k := range tasks {
		if k.item.Check != nil {
			k.setDetail(o)
			readable = append(readable, k)
		}
	}
	bar := newProgress(stderr, len(readable))
	defer bar.clear()
	p := &footwardv1.Provenance{}
	for from := 0; from < len(readable); from += perCall {
		part := readable[from:min(from+perCall, len(readable))]
		m := &footwardv1.CheckManyRequest{}
		for _, k := range part {
			m.Items = append(m.Items, k.item.Check)
		}
		r, err := c.CheckMany(ctx, m)
		if err != nil {
			return p, inWords(err)
		}
		if len(r.GetOutcomes()) != len(part) {
			return p, fmt.Errorf("%d answers to %d checks", len(r.GetOutcomes()), len(part))
		}
		for i, k := range part {
			k.outcome = r.GetOutcomes()[i]
		}
		join(p, r.GetProvenance())
		bar.show(from + len(part))
	}
	return p, nil
}

// inWords leaves out the frame that gRPC puts round an error.
func inWords(err error) error {
	if s, ok := status.FromError(err); ok {
		return fmt.Errorf("%s (%s)", s.Message(), s.Code())
	}
	return err
}

// join adds the bases of a later call to those of the calls before.
func join(p, later *footwardv1.Provenance) {
	p.ServiceVersion, p.KernelRevision, p.Caution = later.GetServiceVersion(), later.GetKernelRevision(), later.GetCaution()
	for _, b := range later.GetBases() {
		known := false
		for _, has := range p.GetBases() {
			known = known || has.GetBasis() == b.GetBasis()
		}
		if !known {
			p.Bases = append(p.Bases, b)
		}
	}
}

func (c *connection) name() string {
	if c.server == "" {
		return "the calculation in this program"
	}
	return c.server
}

// request returns the check that an item holds with its name in the contract, or
// nothing.
func (t *task) request() (protoreflect.Message, protoreflect.Name) {
	item := t.item.Check.ProtoReflect()
	f := item.WhichOneof(item.Descriptor().Oneofs().ByName("check"))
	if f == nil {
		return nil, ""
	}
	return item.Get(f).Message(), f.Name()
}

// setDetail asks for what will be printed. As JSON, a file's own choice stands.
func (t *task) setDetail(o *checkOptions) {
	detail := footwardv1.Detail_DETAIL_LIMIT_STATES
	switch {
	case o.derivation:
		detail = footwardv1.Detail_DETAIL_DERIVATION
	case o.json:
		return
	case o.brief:
		detail = footwardv1.Detail_DETAIL_GOVERNING
	}
	m, _ := t.request()
	if m == nil {
		return // refused by the service
	}
	m.Set(m.Descriptor().Fields().ByName("detail"), protoreflect.ValueOfEnum(detail.Number()))
}

// kind returns the name of the check in words.
func (t *task) kind() string {
	if _, name := t.request(); name != "" {
		return strings.ReplaceAll(string(name), "_", " ")
	}
	return "check"
}

// label returns the caller's own name for the check, or its kind.
func (t *task) label() string {
	if m, _ := t.request(); m != nil {
		if label := m.Get(m.Descriptor().Fields().ByName("label")).String(); label != "" {
			return label
		}
	}
	return t.kind()
}
