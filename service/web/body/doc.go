// Package body reads requests from JSON, by the JSON form of protobuf, and writes
// answers in it.
//
// Whatever a text holds, it is read: what has no place in the request is told all
// at once, each by the path of its field, and goes with the message to where the
// rest of the request is held against its schema (guard.MarkUnread). In a batch
// each item carries its own. Lists that are longer than their schema lets them be
// are counted and not read, so that a few letters do not become much memory.
package body
