using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;

namespace PlankFit.Planking.Laying;

/// <summary>Where port and starboard were measured apart each side has a plan of its own; port's is laid in the starboard frame and mirrored.</summary>
internal static class SidesApart
{
    public static PlankLayerPlan Joined(PlankLayerPlan starboard, PlankLayerPlan port)
    {
        ImmutableArray<SeamCheck> checks =
        [
            .. starboard.Checks.Where(c => c.Side == Side.Starboard),
            .. port.Checks.Where(c => c.Side == Side.Port),
        ];
        return starboard with { Port = port.Port, PortApart = port, Checks = checks };
    }
}
