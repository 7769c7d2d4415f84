package command

import (
	"crypto/tls"
	"fmt"
	"net"
	"net/url"
	"os"
	"runtime"

	"github.com/BurntSushi/toml"
	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/desk"
	"tackwright/model"
	"tackwright/model/folder"
)

var deskCommand = &command{
	name: "desk", args: "FOLDER",
	short: "the plan on a page in the browser, for people who type no commands",
	about: `Opens a page in the browser on which the week is planned and posted, the day
mended, and the pull list ticked off, on this computer alone. It needs no network
and nothing beside itself, and ends at Ctrl-C. Everything on it works with the
keyboard, and without script.

To have it on phones too, give an address with --listen, such as 0.0.0.0:8080 or
that of this computer, and pass phrases: --phrases is a file, kept outside the
folder, with a line for each role that may come in:

  barn = "..."          sees sheets, and ticks the pull list
  instructor = "..."    notes what changed or takes a slip back, and mends a day
  office = "..."        does all

Each has 12 letters or more. After it a person says who she is, of those whose
role in the folder is no higher; what she notes and posts carries her name. Give a
certificate too, or whoever else is on the network can read along.
`,
	example: "tackwright desk examples/sallowdene",
	least:   1, most: 1,
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o deskOptions
		fs.StringVar(&o.listen, "listen", "", "serve on this `ADDRESS` and port; this computer alone, on a port that is free, if not said")
		fs.BoolVar(&o.noOpen, "no-open", false, "open no browser")
		fs.StringVar(&o.phrases, "phrases", "", "pass phrases by role, in this `FILE`")
		fs.StringArrayVar(&o.names, "name", nil, "browsers may call this computer by this `NAME` too, beside its address; may be said again")
		fs.StringVar(&o.cert, "cert", "", "the certificate for TLS in this `FILE`")
		fs.StringVar(&o.key, "key", "", "its key in this `FILE`")
		return func(c *call) error { return serveDesk(c, &o) }
	},
}

type deskOptions struct {
	listen, phrases, cert, key string
	names                      []string
	noOpen                     bool
}

func serveDesk(c *call, o *deskOptions) error {
	d := desk.Options{Dir: c.args[0], Now: c.env.Now, Listen: o.listen, Names: o.names}
	if o.listen != "" {
		if _, _, err := net.SplitHostPort(o.listen); err != nil {
			return wrongUse("--listen: %q is not an address and a port, such as 127.0.0.1:8080", o.listen)
		}
		if !desk.IsLoopback(o.listen) && o.phrases == "" {
			return wrongUse("--listen: %s is more than this computer alone; give pass phrases too: --phrases FILE", o.listen)
		}
	}
	if o.phrases != "" {
		var err error
		if d.Phrases, err = readPhrases(o.phrases); err != nil {
			return err
		}
	}
	switch {
	case (o.cert == "") != (o.key == ""):
		return wrongUse("--cert and --key go together")
	case o.cert != "":
		pair, err := tls.LoadX509KeyPair(o.cert, o.key)
		if err != nil {
			return wrongUse("--cert: %v", err)
		}
		d.TLS = &tls.Config{Certificates: []tls.Certificate{pair}, MinVersion: tls.VersionTLS12}
	}
	if _, err := folder.Open(c.args[0]); err != nil {
		return err
	}
	d.Search = searcher(c)
	d.Command = c.again
	d.Opened = func(address string) {
		fmt.Fprintf(c.out, "The desk is open at %s\nTo close it: Ctrl-C\n", address)
		for _, ip := range otherAddresses(o.listen) {
			if u, err := url.Parse(address); err == nil {
				u.Host = net.JoinHostPort(ip, u.Port())
				fmt.Fprintf(c.out, "From other computers and phones in the house: %s\n", u)
			}
		}
		if !o.noOpen {
			desk.OpenBrowser(address)
		}
	}
	runtime.GOMAXPROCS(runtime.NumCPU()) // no search runs in this process, so that nothing depends on it
	return desk.Serve(c.ctx, d)
}

// otherAddresses are those under which others in the house reach this computer,
// where all of its addresses are listened on.
func otherAddresses(listen string) (ips []string) {
	host, _, err := net.SplitHostPort(listen)
	if ip := net.ParseIP(host); err != nil || ip == nil || !ip.IsUnspecified() {
		return nil
	}
	all, err := net.InterfaceAddrs()
	if err != nil {
		return nil
	}
	for _, a := range all {
		if n, ok := a.(*net.IPNet); ok && n.IP.To4() != nil && n.IP.IsPrivate() {
			ips = append(ips, n.IP.String())
		}
	}
	return ips
}

// readPhrases reads the pass phrases of a house's network.
func readPhrases(file string) (desk.Phrases, error) {
	var said struct{ Barn, Instructor, Office string }
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, fmt.Errorf("the pass phrases cannot be read: %w", err)
	}
	meta, err := toml.Decode(string(text), &said)
	if err != nil {
		return nil, wrongUse("--phrases: %v", err)
	}
	if other := meta.Undecoded(); len(other) > 0 {
		return nil, wrongUse("--phrases: %s is no role; there are barn, instructor and office", other[0])
	}
	p := desk.Phrases{}
	for role, phrase := range map[model.Role]string{model.Barn: said.Barn, model.Instructor: said.Instructor, model.Office: said.Office} {
		if phrase != "" {
			p[role] = phrase
		}
	}
	if err := p.Check(); err != nil {
		return nil, wrongUse("--phrases: %v", err)
	}
	return p, nil
}
