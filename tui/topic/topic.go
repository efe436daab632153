// Package topic is the program's help by topic: Markdown files that come with it, read
// into the document model when somebody asks for one.
package topic

import (
	"slices"

	"trivet/fixtures"
	"trivet/mechanics/doc"
)

// Names are the topics, in the order in which they are listed.
func Names() []string { return slices.Clone(fixtures.TopicNames) }

// Source is a topic as Markdown.
func Source(name string) (text string, ok bool) {
	for _, t := range fixtures.Topics() {
		if t.Name == name {
			return t.Text, true
		}
	}
	return "", false
}

// Of is a topic as a document.
func Of(name string) (*doc.Doc, bool) {
	text, ok := Source(name)
	if !ok {
		return nil, false
	}
	return Read(text), true
}
