using System.Collections.Immutable;

namespace PlankFit.Planking.Stock;

/// <summary>
/// One lane while it is sawn: it is parted, and its parts again. A cut can be carried across a part only where it enters no piece that lies in that part still;
/// an end in whose way a neighbour lies waits until another cut has parted the two, and where the two are in each other's way one more cut goes between them, or
/// along an edge where they lie abreast. What never becomes free stops where its own end does.
/// </summary>
/// <param name="between">The cut that parts what lies in order along a part, along the grain if it may, or null.</param>
internal sealed class LaneBench(
    IEnumerable<LaneEnd> ends,
    IEnumerable<LaneEnd> edges,
    ImmutableArray<LanePiece> pieces,
    LaneAtSaw lane,
    Func<ImmutableArray<LanePiece>, ImmutableArray<LanePiece>, bool, LaneEnd?> between
)
{
    private List<LaneEnd> left = [.. ends.OrderBy(e => e.Across.MiddleMm)];
    private readonly List<LaneEnd> along = [.. edges];
    private readonly List<LanePart> parts = [new(pieces, lane.Frame.BeginsMm, lane.Frame.LengthMm)];

    /// <summary>Ends that can be sawn as the lane lies now.</summary>
    public IEnumerable<OpenCut> Open() => In(part => left.Where(part.Lets));

    /// <summary>What parts pieces whose ends are in each other's way; nothing where all are parted.</summary>
    public OpenCut[] InEachOthersWay()
    {
        OpenCut[] across = [.. In(part => part.Partings(between, false))];
        OpenCut[] edge = across.Length > 0 ? across : [.. In(part => along.Where(part.IsPartedBy))];
        return edge.Length > 0 ? edge : [.. In(part => part.Partings(between, true))];
    }

    public SawCut Make(OpenCut cut)
    {
        left.Remove(cut.End);
        along.Remove(cut.End);
        parts.Remove(cut.Part);
        parts.AddRange(cut.Part.PartedBy(cut.End));
        (LaneEnd made, ImmutableArray<LaneEnd> rest) = EndsByParting.Of(cut.End, [.. left], lane);
        left = [.. rest];
        return made.Made(pieces);
    }

    /// <summary>Edges, each along its own piece, and ends that never became free.</summary>
    public IEnumerable<SawCut> Rest() => along.Concat(left).Select(e => e.Cut);

    private IEnumerable<OpenCut> In(Func<LanePart, IEnumerable<LaneEnd>> cuts) =>
        parts.SelectMany(part => cuts(part).Select(end => new OpenCut(this, part, end)));
}

/// <summary>A cut that can be made now.</summary>
internal sealed record OpenCut(LaneBench Lane, LanePart Part, LaneEnd End)
{
    /// <summary>Of what is left on both sides of it.</summary>
    public double ShorterMm => Part.Shorter(End.Across.MiddleMm);

    public double Setting => End.Across.Setting;
}
