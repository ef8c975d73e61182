package main

import (
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// task is one check of a file, and what becomes of it.
type task struct {
	file    string
	item    reading.Item
	several bool // whether the file holds more than one
	outcome *footwardv1.CheckOutcome
}

// place names the check by where it stands.
func (t *task) place() string {
	if !t.several {
		return t.file
	}
	return fmt.Sprintf("%s:%d", t.file, t.item.Line)
}

// standardInput is the name that stands for standard input.
const standardInput = "-"

// gather reads all files. What cannot be read becomes a task with a fault.
func gather(names []string, stdin io.Reader) []*task {
	var tasks []*task
	for _, name := range names {
		files, err := files(name)
		if err != nil {
			tasks = append(tasks, unread(name, err))
		}
		for _, file := range files {
			tasks = append(tasks, read(file, stdin)...)
		}
	}
	return tasks
}

func unread(file string, err error) *task {
	return &task{file: file, item: reading.Item{Faults: []reading.Fault{{Reason: plain(err)}}}}
}

// plain leaves out what an error of the file system repeats.
func plain(err error) string {
	if p, ok := err.(*fs.PathError); ok {
		return p.Err.Error()
	}
	return err.Error()
}

// files returns a file, or the requests in a folder and its folders, sorted.
func files(name string) ([]string, error) {
	if name == standardInput {
		return []string{name}, nil
	}
	info, err := os.Stat(name)
	if err != nil {
		return nil, err
	}
	if !info.IsDir() {
		return []string{name}, nil
	}
	var found []string
	err = filepath.WalkDir(name, func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && slices.Contains([]string{".yaml", ".yml", ".json"}, strings.ToLower(filepath.Ext(path))) {
			found = append(found, path)
		}
		return err
	})
	if err == nil && len(found) == 0 {
		err = fmt.Errorf("holds no file that ends in .yaml, .yml or .json")
	}
	slices.Sort(found)
	return found, err
}

func read(name string, stdin io.Reader) []*task {
	source := stdin
	file := "standard input"
	if name != standardInput {
		opened, err := os.Open(name)
		if err != nil {
			return []*task{unread(name, err)}
		}
		defer opened.Close()
		source, file = opened, name
	}
	items, err := reading.Read(source)
	if err != nil {
		return []*task{unread(file, err)}
	}
	tasks := make([]*task, len(items))
	for i, item := range items {
		tasks[i] = &task{file: file, item: item, several: len(items) > 1}
	}
	return tasks
}
