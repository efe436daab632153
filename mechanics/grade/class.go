package grade

import "strings"

// Student is one row of marks. Fault says why it could not be marked, and then
// there are none.
type Student struct {
	Name  string
	Sheet string // the variant, where there are several
	Marks []Mark
	Notes []string // what holds of several answers at once
	Fault string
}

// Right counts the answers that are right.
func (s Student) Right() int { return s.count(Verdict.OK) }

// Asked counts the answers that could be marked: what the sheet has no value for is
// not asked of anybody.
func (s Student) Asked() int { return s.count(func(v Verdict) bool { return v != NoValue }) }

func (s Student) count(is func(Verdict) bool) (n int) {
	for _, m := range s.Marks {
		if is(m.Verdict) {
			n++
		}
	}
	return n
}

// Remarks say what is not right, one a kind of mistake: "T1, T2: sign reversed".
func (s Student) Remarks() []string {
	if s.Fault != "" {
		return []string{s.Fault}
	}
	out := []string{}
	names := map[string][]string{}
	for _, m := range s.Marks {
		names[m.Says] = append(names[m.Says], m.Name)
	}
	for _, m := range s.Marks {
		if of := names[m.Says]; m.Verdict != Right && of != nil {
			out = append(out, strings.Join(of, ", ")+": "+m.Says)
			delete(names, m.Says)
		}
	}
	return append(out, s.Notes...)
}

// Class is all that was marked: of each student a mark for each question, in their order.
type Class struct {
	Sheet, Title string
	Rule         Rule
	Questions    []string
	Students     []Student
}

// Question is how a class did at one result. Often is the commonest mistake and
// Times how often it was made; both are blank where none was made twice. Of several
// the first met.
type Question struct {
	Name     string `json:"name"`
	Of       int    `json:"of"`
	Answered int    `json:"answered"`
	Right    int    `json:"right"`
	Often    string `json:"mistake,omitempty"`
	Times    int    `json:"times,omitempty"`
}

// ByQuestion counts the class by question, in the order of the columns.
func (c Class) ByQuestion() []Question {
	out := make([]Question, len(c.Questions))
	for i, name := range c.Questions {
		q := Question{Name: name}
		var mistakes []string
		times := map[string]int{}
		for _, s := range c.Students {
			if i >= len(s.Marks) || s.Marks[i].Verdict == NoValue {
				continue
			}
			m := s.Marks[i]
			q.Of++
			if m.Verdict != Missing {
				q.Answered++
			}
			if m.Verdict.OK() {
				q.Right++
			}
			if m.Verdict.mistaken() && m.Verdict != Wrong {
				says := m.Says
				if m.Verdict == Close || m.Verdict == Sign {
					says = m.Verdict.String()
				}
				mistakes = append(mistakes, says)
				times[says]++
			}
		}
		for _, says := range mistakes {
			if times[says] > max(q.Times, 1) { // what happened once is not common
				q.Often, q.Times = says, times[says]
			}
		}
		out[i] = q
	}
	return out
}
