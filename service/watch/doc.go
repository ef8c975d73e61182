// Package watch holds the tests of what is in deploy for those who watch the
// service: scrape configuration, rules, alerts and dashboard, with a real
// Prometheus against the real service. .ci/watch runs them where they must not be
// skipped.
package watch
