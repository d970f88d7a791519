using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>
/// Every order of ripping a board and sawing off what lanes side by side leave empty at its far end, by dynamic programming over runs of lanes: the one whose
/// ends are the largest single piece, then the largest second one, and so on. A run is ripped up, or its empty end comes off first, or it is ripped in two.
/// </summary>
internal sealed class EndsOff
{
    /// <summary>Sums of doubles, mm²: as large.</summary>
    private const double SameMm2 = 1e-3;

    private readonly SawnBoard board;
    private readonly NestSpec spec;
    private readonly ImmutableArray<SawnLane> lanes;
    private readonly ImmutableArray<SawCut> planed;
    private readonly SawCut[] rips;
    private readonly BoardFrame frame;
    private readonly Band[] bands;
    private readonly Dictionary<(int, int, double), Way> known = [];

    public EndsOff(
        SawnBoard board,
        NestSpec spec,
        ImmutableArray<SawnLane> lanes,
        ImmutableArray<SawCut> rips
    )
    {
        (this.board, this.spec, this.lanes) = (board, spec, lanes);
        frame = new(board.Stock);
        planed = [.. rips.Where(r => r.IsPlaned)];
        this.rips = [.. rips.Where(r => !r.IsPlaned).OrderBy(r => r.From.Y)];
        bands = [.. Enumerable.Range(0, this.rips.Length + 1).Select(Of)];
    }

    /// <summary>Null where no end comes off before the rips.</summary>
    public Way? Best =>
        Of(0, bands.Length, frame.LengthMm) is { IsRipped: false } best ? best : null;

    /// <summary>In the order in which they are made.</summary>
    public ImmutableArray<SawCut> Cuts(Way way)
    {
        double low = bands[way.From].LowMm,
            high = bands[way.To - 1].HighMm;
        return way.AtMm is { } at ? [Across(at, low, high), .. Cuts(way.Parts[0])]
            : way.IsRipped
                ?
                [
                    .. CutOrder.Rips(
                        rips[way.From..(way.To - 1)]
                            .Concat(planed.Where(p => p.From.Y >= low && p.From.Y <= high))
                            .Select(r => To(r, way.EndMm)),
                        low,
                        high
                    ),
                ]
            : [To(rips[way.Parts[1].From - 1], way.EndMm), .. way.Parts.SelectMany(p => Cuts(p))];
    }

    public ImmutableArray<double> LaneEnds(Way way) => [.. lanes.Select(l => EndOf(way, l))];

    private double EndOf(Way way, SawnLane lane) =>
        way.IsRipped
            ? way.EndMm
            : EndOf(
                way.Parts.First(p => (lane.LowMm + lane.HighMm) / 2 <= bands[p.To - 1].HighMm),
                lane
            );

    /// <summary>The first, unless the other leaves a larger piece, or as large a one and a larger second, and so on; from the largest.</summary>
    public static bool IsLarger(double[] other, double[] one, double sameMm2)
    {
        for (int i = 0; i < Math.Max(one.Length, other.Length); i++)
        {
            double more = other.ElementAtOrDefault(i) - one.ElementAtOrDefault(i);
            if (Math.Abs(more) > sameMm2)
            {
                return more > 0;
            }
        }

        return false;
    }

    private Way Of(int from, int to, double endMm)
    {
        if (known.TryGetValue((from, to, endMm), out Way? way))
        {
            return way;
        }

        Way best = new(
            from,
            to,
            endMm,
            null,
            [],
            Sorted(Enumerable.Range(from, to - from).Select(b => Left(b, b + 1, endMm)))
        );
        void Offer(Way other)
        {
            best = IsLarger(other.LeftMm2, best.LeftMm2, SameMm2) ? other : best;
        }

        // Only what two lanes side by side leave empty is the larger for a cut before their rip.
        if (Enumerable.Range(from, to - from - 1).Any(b => Left(b, b + 2, endMm) > 0))
        {
            double left = Left(from, to, endMm);
            if (left > 0)
            {
                double at = bands[from..to].Max(b => b.EndMm);
                Way inner = Of(from, to, at);
                Offer(new(from, to, endMm, at, [inner], Sorted(inner.LeftMm2.Append(left))));
            }

            for (int middle = from + 1; middle < to; middle++)
            {
                ImmutableArray<Way> parts = [Of(from, middle, endMm), Of(middle, to, endMm)];
                if (!parts.All(p => p.IsRipped))
                {
                    Offer(
                        new(from, to, endMm, null, parts, Sorted(parts.SelectMany(p => p.LeftMm2)))
                    );
                }
            }
        }

        return known[(from, to, endMm)] = best;
    }

    /// <summary>What is worth keeping of the end that all of them leave empty, in one piece.</summary>
    private double Left(int from, int to, double endMm)
    {
        double at = bands[from..to].Max(b => b.EndMm);
        return Offcuts.LargestMm2(
            spec,
            frame,
            (at > 0 ? at + spec.KerfMm : 0, endMm, bands[from].LowMm, bands[to - 1].HighMm)
        );
    }

    private static double[] Sorted(IEnumerable<double> areas) =>
        [.. areas.Where(a => a > 0).OrderDescending()];

    /// <summary>What lies between two rips: a lane, or what is left beside them.</summary>
    private Band Of(int number)
    {
        double low = number == 0
                ? 0
                : rips[number - 1].From.Y + Math.Max(0, rips[number - 1].KerfMm),
            high = number == rips.Length
                ? frame.WidthMm
                : rips[number].From.Y + Math.Min(0, rips[number].KerfMm);
        return new(
            low,
            high,
            In(low, high).SelectMany(p => frame.Of(p)).Select(p => p.X).DefaultIfEmpty(0).Max()
        );
    }

    private IEnumerable<LaidPiece> In(double low, double high) =>
        lanes
            .Where(l => (l.LowMm + l.HighMm) / 2 is var middle && middle >= low && middle <= high)
            .SelectMany(l => l.PieceIds)
            .Select(id => board.Pieces.First(p => p.Piece.Id == id));

    private static SawCut To(SawCut rip, double endMm)
    {
        Vec2 to = new(endMm, rip.To.Y);
        return rip with { To = to, Line = [rip.From, to] };
    }

    private SawCut Across(double at, double low, double high)
    {
        Vec2 from = new(at, low),
            to = new(at, high);
        return new(0, CutKind.EndOff, null, null, null, from, to, false, 0, spec.KerfMm, [from, to])
        {
            Ends =
            [
                .. In(low, high)
                    .Where(p => EndsAt(LanePiece.Of(p, frame, spec.Saw), at))
                    .Select(p => p.Piece.Id),
            ],
        };
    }

    private bool EndsAt(LanePiece piece, double at) =>
        piece.Sides.Any(s =>
            s.Kind == SideKind.Far && s.Points.All(p => Math.Abs(p.X - at) <= spec.Saw.StraightMm)
        );

    /// <param name="EndMm">Where its pieces end, along the board.</param>
    private sealed record Band(double LowMm, double HighMm, double EndMm);

    /// <summary>How bands <paramref name="From"/> up to but without <paramref name="To"/> are sawn apart.</summary>
    /// <param name="EndMm">Where they end before.</param>
    /// <param name="AtMm">Where their end comes off first; null where it does not.</param>
    /// <param name="Parts">What is left when the end is off, or both parts when they are ripped in two; none where all are ripped one after another.</param>
    /// <param name="LeftMm2">The areas that their ends leave, the largest first.</param>
    internal sealed record Way(
        int From,
        int To,
        double EndMm,
        double? AtMm,
        ImmutableArray<Way> Parts,
        double[] LeftMm2
    )
    {
        public bool IsRipped => Parts.IsEmpty;
    }
}
