using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>
/// Every order of ripping a board and sawing off what lanes side by side leave empty at either end, by dynamic programming over runs of lanes: the one that
/// leaves the largest single offcut, then the largest second one, and so on. A run is ripped up, or one of its empty ends comes off first, or it is ripped in two.
/// </summary>
internal sealed class EndsOff
{
    /// <summary>
    /// What is kept is told in whole square centimetres: one that is a hair larger, by what a kerf that leans takes, is no reason to give up all that is kept
    /// besides. Rounded, and not compared within so much: only then is the best of the whole made of the best of its parts.
    /// </summary>
    private const double SameMm2 = 100;

    private readonly NestSpec spec;
    private readonly ImmutableArray<SawCut> planed;
    private readonly SawCut[] rips;
    private readonly BoardFrame frame;
    private readonly RippedBand[] bands;
    private readonly ImmutableArray<SawnLane> lanes;
    private readonly Dictionary<Run, Way> known = [];

    /// <param name="plain">All rips over the whole length, then every lane.</param>
    public EndsOff(NestSpec spec, BoardCutList plain)
    {
        (this.spec, frame, lanes) = (spec, plain.Frame, plain.Lanes);
        ImmutableArray<SawCut> all = [.. plain.Cuts.Where(c => c.Kind == CutKind.Rip)];
        planed = [.. all.Where(r => r.IsPlaned)];
        rips = [.. all.Where(r => !r.IsPlaned).OrderBy(r => r.From.Y)];
        bands = [.. RippedBand.All(spec, plain, rips, planed)];
    }

    /// <summary>Null where no end comes off before the rips.</summary>
    public Way? Best =>
        Of(new(0, bands.Length, LaneSpan.Of(frame))) is { IsRipped: false } best ? best : null;

    /// <summary>In the order in which they are made.</summary>
    public ImmutableArray<SawCut> Cuts(Way way)
    {
        Run run = way.Run;
        double low = bands[run.From].LowMm,
            high = bands[run.To - 1].HighMm;
        return way.Off is { } off ? [Across(off, run), .. Cuts(way.Parts[0])]
            : way.IsRipped
                ?
                [
                    .. CutOrder.Rips(
                        rips[run.From..(run.To - 1)]
                            .Concat(planed.Where(p => p.From.Y >= low && p.From.Y <= high))
                            .Select(r => Within(r, run.Along)),
                        low,
                        high
                    ),
                ]
            :
            [
                Within(rips[way.Parts[1].Run.From - 1], run.Along),
                .. way.Parts.SelectMany(p => Cuts(p)),
            ];
    }

    /// <summary>From where to where each lane reaches when it is sawn.</summary>
    public ImmutableArray<LaneSpan> Lanes(Way way) => [.. lanes.Select(l => Lane(way, l))];

    private LaneSpan Lane(Way way, SawnLane lane) =>
        way.IsRipped
            ? way.Run.Along
            : Lane(
                way.Parts.First(p => (lane.LowMm + lane.HighMm) / 2 <= bands[p.Run.To - 1].HighMm),
                lane
            );

    /// <summary>The first, unless the other leaves a larger piece, or as large a one and a larger second, and so on; from the largest.</summary>
    public static bool IsLarger(double[] other, double[] one)
    {
        for (int i = 0; i < Math.Max(one.Length, other.Length); i++)
        {
            double more = Told(other.ElementAtOrDefault(i)) - Told(one.ElementAtOrDefault(i));
            if (more != 0)
            {
                return more > 0;
            }
        }

        return false;
    }

    private static double Told(double areaMm2) => Math.Round(areaMm2 / SameMm2);

    private Way Of(Run run)
    {
        if (known.TryGetValue(run, out Way? way))
        {
            return way;
        }

        Way best = new(
            run,
            null,
            [],
            Sorted(bands[run.From..run.To].SelectMany(b => b.KeptMm2(run.Along)))
        );
        void Offer(Way other)
        {
            best = IsLarger(other.LeftMm2, best.LeftMm2) ? other : best;
        }

        // Only what two lanes side by side leave empty is the larger for a cut before their rip.
        bool MayGain(bool near) =>
            Enumerable
                .Range(run.From, run.To - run.From - 1)
                .Any(b => Left(Off(run with { From = b, To = b + 2 }, near)).Length > 0);
        bool nearEnd = MayGain(near: true),
            farEnd = MayGain(near: false);
        foreach (
            EmptyPart off in new[] { (nearEnd, true), (farEnd, false) }
                .Where(e => e.Item1)
                .Select(e => Off(run, e.Item2))
        )
        {
            double[] left = Left(off);
            if (left.Length > 0)
            {
                Way inner = Of(run with { Along = off.Rest });
                Offer(new(run, off, [inner], Sorted(inner.LeftMm2.Concat(left))));
            }
        }

        for (int middle = run.From + 1; (nearEnd || farEnd) && middle < run.To; middle++)
        {
            ImmutableArray<Way> parts =
            [
                Of(run with { To = middle }),
                Of(run with { From = middle }),
            ];
            if (!parts.All(p => p.IsRipped))
            {
                Offer(new(run, null, parts, Sorted(parts.SelectMany(p => p.LeftMm2))));
            }
        }

        return known[run] = best;
    }

    /// <summary>The end that all lanes of a run leave empty, a kerf away from the first of their pieces or the last.</summary>
    private EmptyPart Off(Run run, bool near)
    {
        RippedBand[] these = bands[run.From..run.To];
        LaneSpan along = run.Along;
        double at = near ? these.Min(b => b.Pieces.FromMm) : these.Max(b => b.Pieces.ToMm);
        LaneSpan end = near
            ? new(along.FromMm, Math.Min(at - spec.KerfMm, along.ToMm))
            : new(Math.Max(at + spec.KerfMm, along.FromMm), along.ToMm);
        return new(
            near,
            at,
            new(end.FromMm, end.ToMm, these[0].LowMm, these[^1].HighMm),
            near ? along with { FromMm = at } : along with { ToMm = at }
        );
    }

    /// <summary>What is worth keeping of an end in one piece.</summary>
    private double[] Left(EmptyPart off) => FreeBoard.AreasMm2(spec, frame, off.End, []);

    private static double[] Sorted(IEnumerable<double> areas) => [.. areas.OrderDescending()];

    private static SawCut Within(SawCut rip, LaneSpan along)
    {
        Vec2 from = new(along.FromMm, rip.From.Y),
            to = new(along.ToMm, rip.To.Y);
        return rip with { From = from, To = to, Line = [from, to] };
    }

    private SawCut Across(EmptyPart off, Run run)
    {
        Vec2 from = new(off.AtMm, off.End.Y0),
            to = new(off.AtMm, off.End.Y1);
        double kerf = off.Near ? -spec.KerfMm : spec.KerfMm;
        return SawCut.Straight(CutKind.EndOff, from, to, kerf) with
        {
            IsNearEnd = off.Near,
            Ends =
            [
                .. bands[run.From..run.To]
                    .SelectMany(b => b.LanePieces)
                    .Where(p => IsMadeAt(p, off))
                    .Select(p => p.Id),
            ],
        };
    }

    private bool IsMadeAt(LanePiece piece, EmptyPart off) =>
        piece.Sides.Any(s =>
            s.Kind == (off.Near ? SideKind.Near : SideKind.Far)
            && s.Points.All(p => Math.Abs(p.X - off.AtMm) <= spec.Saw.StraightMm)
        );

    /// <summary>An end that comes off in one piece.</summary>
    /// <param name="AtMm">Where it is sawn off.</param>
    /// <param name="Rest">What is left of the lanes.</param>
    internal sealed record EmptyPart(bool Near, double AtMm, BoardBox End, LaneSpan Rest);

    /// <summary>Bands <paramref name="From"/> up to but without <paramref name="To"/>, as long as they are by then.</summary>
    internal readonly record struct Run(int From, int To, LaneSpan Along);

    /// <summary>How a run is sawn apart.</summary>
    /// <param name="Off">What comes off first; null where nothing does.</param>
    /// <param name="Parts">What is left when the end is off, or both parts when they are ripped in two; none where all are ripped one after another.</param>
    /// <param name="LeftMm2">The areas of all that is kept of it, the largest first.</param>
    internal sealed record Way(Run Run, EmptyPart? Off, ImmutableArray<Way> Parts, double[] LeftMm2)
    {
        public bool IsRipped => Parts.IsEmpty;
    }
}
