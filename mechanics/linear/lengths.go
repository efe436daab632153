package linear

// lengths keeps items in doubly linked lists by a number.
type lengths struct {
	first      []int // of each number, -1 where there is none
	next, prev []int
	number     []int // of each item, -1 where it is in no list
}

func newLengths(items, limit int) lengths {
	return lengths{first: none(limit + 1), next: none(items), prev: none(items), number: none(items)}
}

func (l *lengths) head(number int) int {
	if number >= len(l.first) {
		return -1
	}
	return l.first[number]
}

func (l *lengths) take(item int) {
	number := l.number[item]
	if number < 0 {
		return
	}
	before, after := l.prev[item], l.next[item]
	if before >= 0 {
		l.next[before] = after
	} else {
		l.first[number] = after
	}
	if after >= 0 {
		l.prev[after] = before
	}
	l.number[item] = -1
}

func (l *lengths) put(item, number int) {
	if l.number[item] == number {
		return
	}
	l.take(item)
	after := l.first[number]
	l.next[item], l.prev[item] = after, -1
	if after >= 0 {
		l.prev[after] = item
	}
	l.first[number], l.number[item] = item, number
}
