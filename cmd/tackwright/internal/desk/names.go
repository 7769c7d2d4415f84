package desk

import (
	"crypto/sha256"
	"encoding/hex"
	"net/url"

	"tackwright/model"
)

// riderKey stands for a rider in addresses, which never hold a name.
func riderKey(r *model.Rider) string { return key("rider", r.Name) }

// rideKey stands for a ride of a date.
func rideKey(r *model.Ride) string {
	return key("ride", r.Rider.Name, r.Meeting.Name, r.Start.String())
}

// key is short, and the same as long as what it stands for has its name.
func key(parts ...string) string {
	h := sha256.New()
	for _, p := range parts {
		h.Write([]byte(p + "\x00"))
	}
	return hex.EncodeToString(h.Sum(nil)[:6])
}

func horsePath(h *model.Horse, on model.Date) string {
	return "/horse/" + url.PathEscape(h.Name) + "?on=" + on.String()
}

// To is where it is said that the horse is out, or back.
func (x *horseView) To(what string) string {
	return "/horse/" + url.PathEscape(x.Horse.Name) + "/" + what + "?on=" + x.Date.String()
}

func riderPath(r *model.Rider, on model.Date) string {
	return "/rider/" + riderKey(r) + "?on=" + on.String()
}

func ridePath(r *model.Ride) string { return "/ride/" + r.Date().String() + "/" + rideKey(r) }

func (v *visit) horse() (*model.Horse, error) {
	for _, h := range v.reading.Centre.Horses {
		if h.Name == v.r.PathValue("horse") {
			return h, nil
		}
	}
	return nil, notThere("there is no such horse in the folder")
}

func (v *visit) rider() (*model.Rider, error) {
	for _, r := range v.reading.Centre.Riders {
		if riderKey(r) == v.r.PathValue("rider") {
			return r, nil
		}
	}
	return nil, notThere("there is no such rider in the folder")
}
