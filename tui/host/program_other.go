//go:build !unix

package host

import "os/exec"

func apart(*exec.Cmd) {}

func giveWay(int) {}
