package guard

import (
	"context"

	"google.golang.org/grpc"
)

// Early returns a registrar whose unary methods turn calls away before their
// message is read out when the gate is shut: to read a large batch costs a good
// part of answering it. Interceptors see such a call without its message.
func (g *Gate) Early(to grpc.ServiceRegistrar) grpc.ServiceRegistrar { return early{to, g} }

type early struct {
	grpc.ServiceRegistrar
	gate *Gate
}

// RegisterService implements grpc.ServiceRegistrar.
func (e early) RegisterService(d *grpc.ServiceDesc, service any) {
	own := *d
	own.Methods = make([]grpc.MethodDesc, len(d.Methods))
	for i, m := range d.Methods {
		method := "/" + d.ServiceName + "/" + m.MethodName
		own.Methods[i] = grpc.MethodDesc{MethodName: m.MethodName, Handler: func(s any, ctx context.Context, read func(any) error, before grpc.UnaryServerInterceptor) (any, error) {
			if before == nil || open(method) || !e.gate.shut(ctx, method) {
				return m.Handler(s, ctx, read, before)
			}
			// Should the gate have opened meanwhile, the call is answered after all.
			return before(ctx, nil, &grpc.UnaryServerInfo{Server: s, FullMethod: method}, func(ctx context.Context, _ any) (any, error) {
				return m.Handler(s, ctx, read, nil)
			})
		}}
	}
	e.ServiceRegistrar.RegisterService(&own, service)
}
