package evidence

// Prospect says whether a forecast can tell the day on which something will
// be ready, and if not, why.
type Prospect string

// The prospects, in the words of the output.
const (
	Reached Prospect = "met"              // it is ready today
	Losing  Prospect = "drying"           // it dries toward its limit or target
	Gaining Prospect = "gaining"          // it takes up water toward its target
	Stalled Prospect = "not in this air"  // it will not get there in the air it lies in
	Unread  Prospect = "too few readings" // what was read does not carry a forecast
	Unasked Prospect = "not needed"       // no limit is held against it
)
