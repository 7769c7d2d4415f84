package bound

import "slices"

// Costs of the horses' best weeks as the market has them.
func (m *Market) Costs() []int64 { return slices.Clone(m.costs) }
