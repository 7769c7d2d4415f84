package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// The test binary stands in for the program when it asks itself for an instance.
func TestMain(m *testing.M) {
	if len(os.Args) > 1 && os.Args[1] == child {
		main()
	}
	os.Exit(m.Run())
}

func measured(t *testing.T, args ...string) (status int, stdout, stderr string) {
	t.Helper()
	var out, complaints bytes.Buffer
	status = run(context.Background(), &out, &complaints, args)
	return status, out.String(), complaints.String()
}

func TestEachInstanceHasALineAndEachSizeAMedian(t *testing.T) {
	status, out, complaints := measured(t, "weeks", "--sizes", "small", "--seeds", "1-2")
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if status != 0 || len(lines) != 5 || !strings.HasPrefix(lines[1], "small 1 ") || !strings.HasPrefix(lines[2], "small 2 ") {
		t.Fatalf("status %d, %s\n%s", status, complaints, out)
	}
	if !strings.Contains(lines[1], "all; seat a ") || !strings.Contains(lines[4], "proved 2 of 2; median to all proved ") {
		t.Errorf("%s", out)
	}
}

func TestABuyHasALineForRidesAndOneForTheBest(t *testing.T) {
	status, out, complaints := measured(t, "buys", "--sizes", "small", "--seeds", "1")
	lines := strings.Split(out, "\n")
	if status != 0 || len(lines) < 3 || !strings.HasPrefix(lines[1], "small rides 1 ") || !strings.HasPrefix(lines[2], "small five best 1 ") ||
		!strings.Contains(lines[1], "all; seat a ") || !strings.Contains(lines[2], "spares that bring rides ") {
		t.Errorf("status %d, %s\n%s", status, complaints, out)
	}
}

func TestAsCSVEveryLineHasTheColumnsOfTheHead(t *testing.T) {
	status, out, complaints := measured(t, "weeks", "--sizes", "small", "--seeds", "3", "--loose", "--csv")
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if status != 0 || err != nil || len(rows) != 2 || rows[1][0] != "small loose 3" || rows[1][2] != "25" || rows[1][3] != "5" {
		t.Fatalf("status %d, %v, %s\n%s", status, err, complaints, out)
	}
}

func TestWrongUseIsToldAndIsStatus2(t *testing.T) {
	for _, args := range [][]string{{}, {"days"}, {"wcnf"}, {"weeks", "--sizes", "vast"}, {"weeks", "--seeds", "9-1"},
		{"weeks", "--speed"}, {"smptsp", "--peers", "clasp", "x.dat"}} {
		if status, _, complaints := measured(t, args...); status != 2 || complaints == "" {
			t.Errorf("%q: status %d, %q", args, status, complaints)
		}
	}
	if status, _, complaints := measured(t, "weeks", "--peers", "abacus"); status != 3 || !strings.Contains(complaints, "there are clasp and cbc") {
		t.Errorf("status %d, %q", status, complaints)
	}
}

func TestAPeerThatIsNotInstalledIsNamed(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	if status, _, complaints := measured(t, "weeks", "--peers", "clasp"); status != 3 || !strings.Contains(complaints, "clasp is not installed") {
		t.Errorf("status %d, %q", status, complaints)
	}
}

func TestARepairIsMendedUntilItIsKeptAndUntilAllIsProved(t *testing.T) {
	status, out, complaints := measured(t, "repairs", "--sizes", "median", "--seeds", "2", "--limit", "20s")
	lines := strings.Split(strings.TrimSpace(out), "\n")
	if status != 0 || len(lines) != 13 || !strings.HasPrefix(lines[1], "median keep 2 ") || !strings.HasPrefix(lines[2], "median all 2 ") ||
		!strings.HasPrefix(lines[3], "median what-if 2 ") || !strings.HasPrefix(lines[4], "median typed 2 ") {
		t.Fatalf("status %d, %s\n%s", status, complaints, out)
	}
	if !strings.Contains(lines[1], "all; told a ") || strings.Contains(lines[1], "wishes") || !strings.Contains(lines[2], ", wishes ") ||
		!strings.Contains(lines[3], "all; told a ") || strings.Count(lines[4], ", ") != strings.Count(lines[2], ", ") {
		t.Errorf("%s", out)
	}
}

// Least weight that fails here, by looking: 1 and -1 cannot both be, nor can 2 be true.
func TestAWCNFFileIsSolvedByOrderedAlone(t *testing.T) {
	file := filepath.Join(t.TempDir(), "three.wcnf")
	if err := os.WriteFile(file, []byte("p wcnf 2 4 10\n10 -2 0\n3 1 0\n2 -1 0\n4 2 -1 0\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	status, out, complaints := measured(t, "wcnf", file)
	if status != 0 || !strings.Contains(out, "all; cost 3") {
		t.Errorf("status %d, %s\n%s", status, complaints, out)
	}
}

// Two tasks at once and one after: two workers do.
func TestAStaffingInstanceIsPlannedForTheFewestWorkers(t *testing.T) {
	file := filepath.Join(t.TempDir(), "tiny.dat")
	text := "Type = 1\nJobs = 3\n0 10\n5 15\n20 30\nQualifications = 3\n3: 0 1 2\n3: 0 1 2\n1: 2\n"
	if err := os.WriteFile(file, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
	status, out, complaints := measured(t, "smptsp", file)
	if status != 0 || !strings.Contains(out, "seat a 0") || !strings.Contains(out, "bring in 2") {
		t.Errorf("status %d, %s\n%s", status, complaints, out)
	}
}

// Where a peer is installed it must reach our values, or measure ends with status 1.
func TestPeersThatAreInstalledConfirmAWeek(t *testing.T) {
	for _, peer := range []string{"clasp", "cbc"} {
		if _, err := exec.LookPath(peer); err != nil {
			t.Logf("%s is not installed here", peer)
			continue
		}
		status, out, complaints := measured(t, "weeks", "--sizes", "small", "--seeds", "1", "--limit", "2s", "--peers", peer)
		if status != 0 || !strings.Contains(out, "small 1          "+peer) {
			t.Errorf("status %d, %s\n%s", status, complaints, out)
		}
	}
}

func TestAnOutcomeIsPassedOnWhole(t *testing.T) {
	o := outcome{By: "x", Rides: 3, Goals: []goal{{"seat a", 2, 1, false}}, Seconds: 1.5, Memory: 7}
	words, err := json.Marshal(o)
	var back outcome
	if err != nil || json.Unmarshal(words, &back) != nil || back.Goals[0] != o.Goals[0] || back.Seconds != 1.5 {
		t.Errorf("%s %+v", words, back)
	}
}
