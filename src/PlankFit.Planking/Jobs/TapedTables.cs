using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Jobs;

/// <summary>The table as the hull stands by all that the tape said, one a side, each in the starboard frame.</summary>
public sealed record TapedTables(OffsetTable Starboard, OffsetTable Port)
{
    public OffsetTable Of(Side side) => side == Side.Starboard ? Starboard : Port;
}
