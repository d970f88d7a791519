using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>
/// No rip runs through what the lanes on both its sides leave empty to the far end of what it parts, if that is long enough to keep and nothing is kept the longer
/// for the rip; and no rip is narrower than a kerf. Asked of the list of cuts, by the boxes around the pieces of each lane.
/// </summary>
internal static class EmptyBoardLaws
{
    /// <summary>Lanes lie within this of where their rips are, mm.</summary>
    private const double NearMm = 0.3;

    /// <summary>Outlines are thinned within less when they are laid, mm.</summary>
    private const double ThinnedMm = 0.06;

    public static IEnumerable<string> Broken(NestSpec spec, SawnBoard board) =>
        Broken(spec, BoardCuts.Of(board, spec));

    public static IEnumerable<string> Broken(NestSpec spec, BoardCutList list)
    {
        BoardFrame frame = list.Frame;
        Span[] kept = [.. Offcuts.Of(spec, list).Select(o => Kept(frame, o))];
        Band[] bands = [.. Bands(spec, list)];
        double usable = Usable(frame).End;
        foreach (SawCut rip in list.Cuts.Where(c => c.Kind == CutKind.Rip && !c.IsPlaned))
        {
            string text = $"{list.Board.Id}, cut {rip.Number}, rip at {rip.From.Y:0.0}";
            double low = Math.Min(rip.From.Y, rip.From.Y + rip.KerfMm),
                high = Math.Max(rip.From.Y, rip.From.Y + rip.KerfMm);
            if (high - low < spec.KerfMm - NearMm || low < -NearMm || high > frame.WidthMm + NearMm)
            {
                yield return $"{text}, takes {Math.Min(high, frame.WidthMm) - Math.Max(low, 0):0.00} mm of the board, and the kerf is {spec.KerfMm}";
            }

            Band? under = bands.Where(b => b.High <= low + NearMm).MaxBy(b => b.High),
                over = bands.Where(b => b.Low >= high - NearMm).MinBy(b => b.Low);
            if (under is null || over is null)
            {
                continue;
            }

            // Beside the lanes it parts them from what no piece lies in, over their whole length.
            if (under.IsEmpty || over.IsEmpty)
            {
                continue;
            }

            double end = Math.Min(usable, rip.To.X);
            Span[] beside = [.. kept.Where(k => under.Has(k) || over.Has(k))];
            double from = Math.Max(under.To, over.To);
            if (
                rip.To.X > from + spec.KerfMm + NearMm
                && end - from - spec.KerfMm >= spec.LeastOffcutMm
                && !beside.Any(k => k.From < from && k.To > from + spec.KerfMm)
            )
            {
                yield return $"{text}, runs on to {rip.To.X:0}, and all is empty from {from:0}";
            }
        }
    }

    /// <summary>
    /// Of a board without faults the largest piece kept is as large as any end that lanes side by side, and what lies empty beside them, leave empty in common: such an
    /// end can always be had, by rips beside those lanes and then one cut across them.
    /// </summary>
    public static IEnumerable<string> Smaller(NestSpec spec, BoardCutList list)
    {
        if (
            !list.Frame.Stock.Faults.IsEmpty
            || (list.Frame.Stock.GrainAcross && !list.CutOuts.IsEmpty)
        )
        {
            yield break;
        }

        Band[] bands = [.. Bands(spec, list)];
        (double begin, double end) = Usable(list.Frame);
        double largest = Offcuts.Of(spec, list).Select(o => o.AreaMm2).DefaultIfEmpty(0).Max();
        for (int i = 0; i < bands.Length; i++)
        {
            for (int j = i; j < bands.Length; j++)
            {
                double to = bands[i..(j + 1)].Max(b => b.To),
                    length = double.IsFinite(to) ? end - to - spec.KerfMm : end - begin,
                    width = bands[j].High - bands[i].Low;
                if (
                    length >= spec.LeastOffcutMm
                    && width >= spec.LeastOffcutWidthMm
                    && length * width > largest + (NearMm * (length + width))
                )
                {
                    yield return $"{list.Board.Id}: lanes leave {length:0} x {width:0} mm empty, and the largest piece kept is {largest:0} mm²";
                }
            }
        }
    }

    /// <summary>The first piece of every lane lies at the board's squared end, but where a fault of the board ends between the two: a lane that has been laid nearer to its neighbour than it was ripped keeps where it began.</summary>
    public static IEnumerable<string> BegunLate(NestSpec spec, BoardCutList list)
    {
        double begin =
            Usable(list.Frame).Begin + (list.Frame.Stock.GrainAcross ? spec.EdgeMm : spec.EndMm);
        for (int l = 0; l < list.Lanes.Length; l++)
        {
            SawnLane lane = list.Lanes[l];
            double from = list
                .Board.Pieces.Where(p => lane.PieceIds.Contains(p.Piece.Id))
                .SelectMany(p => list.Frame.Of(p))
                .Min(p => p.X);
            if (
                from > begin + ThinnedMm
                && !Faults(list.Frame)
                    .Any(f => f.To >= begin - spec.KerfMm && f.To < from + ThinnedMm)
            )
            {
                yield return $"{list.Board.Id}: lane {l + 1} begins at {from:0.0}, and no fault ends between there and {begin:0.0}";
            }
        }
    }

    /// <summary>Along the board without what is unusable at its ends.</summary>
    private static (double Begin, double End) Usable(BoardFrame frame) =>
        frame.Stock.GrainAcross
            ? (0, frame.LengthMm)
            : (frame.Stock.MarkedEndMm, frame.LengthMm - frame.Stock.OtherEndMm);

    /// <summary>The lanes, and what lies empty beside and between them, from the marked edge.</summary>
    private static IEnumerable<Band> Bands(NestSpec spec, BoardCutList list)
    {
        double at = 0;
        foreach (SawnLane lane in list.Lanes.OrderBy(l => l.LowMm))
        {
            if (lane.LowMm - at > spec.KerfMm)
            {
                yield return Band.Empty(at, lane.LowMm - spec.KerfMm);
            }

            Vec2[] points =
            [
                .. list
                    .Board.Pieces.Where(p => lane.PieceIds.Contains(p.Piece.Id))
                    .SelectMany(p => list.Frame.Of(p)),
            ];
            yield return new(lane.LowMm, lane.HighMm, points.Min(p => p.X), points.Max(p => p.X));
            at = lane.HighMm + spec.KerfMm;
        }

        if (list.Frame.WidthMm > at)
        {
            yield return Band.Empty(at, list.Frame.WidthMm);
        }
    }

    private static IEnumerable<Span> Faults(BoardFrame frame) =>
        frame.Stock.Faults.Select(f =>
            InFrame(frame, f.FromMm, f.ToMm, f.LowMm ?? 0, f.HighMm ?? frame.Stock.WidthMm)
        );

    private static Span Kept(BoardFrame frame, Offcut offcut) =>
        InFrame(frame, offcut.FromMm, offcut.ToMm, offcut.LowMm, offcut.HighMm);

    private static Span InFrame(BoardFrame frame, double x0, double x1, double y0, double y1)
    {
        Vec2 a = frame.Of(new Vec2(x0, y0)),
            b = frame.Of(new Vec2(x1, y1));
        return new(Math.Min(a.X, b.X), Math.Max(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y));
    }

    private readonly record struct Span(double From, double To, double Low, double High);

    /// <summary>Pieces lie in it from so far to so far along the board.</summary>
    private sealed record Band(double Low, double High, double From, double To)
    {
        public static Band Empty(double low, double high) =>
            new(low, high, double.PositiveInfinity, double.NegativeInfinity);

        public bool IsEmpty => From > To;

        public bool Has(Span kept) => kept.Low < High && kept.High > Low;
    }
}
