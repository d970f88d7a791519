using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;

namespace PlankFit.Tests.Nesting;

/// <summary>
/// No rip runs through a clear box that the lanes on both its sides leave empty to either end of what it parts, if that is worth keeping and larger than anything
/// that is kept for the rip; and no rip is narrower than a kerf. Asked of the list of cuts, by the boxes around the pieces of each lane.
/// </summary>
internal static class EmptyBoardLaws
{
    /// <summary>Lanes lie within this of where their rips are, mm.</summary>
    private const double NearMm = 0.3;

    public static IEnumerable<string> Broken(NestSpec spec, SawnBoard board) =>
        Broken(spec, BoardCuts.Of(board, spec));

    public static IEnumerable<string> Broken(NestSpec spec, BoardCutList list)
    {
        BoardFrame frame = list.Frame;
        Span[] kept = [.. Offcuts.Of(spec, list).Select(o => Kept(frame, o))];
        Band[] bands = [.. Bands(spec, list)];
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

            foreach (Span empty in Empty(spec, rip, under, over))
            {
                if (
                    Clear(spec, list, empty, low, high) is { } clear
                    && !kept.Any(k =>
                        IsForTheRip(k, under, over, empty, spec.KerfMm)
                        && k.Area >= clear.Area - (NearMm * (clear.Length + clear.Width))
                    )
                )
                {
                    yield return $"{text}, runs from {rip.From.X:0} to {rip.To.X:0}, and {clear.From:0} to {clear.To:0} is empty, {clear.Width:0} wide";
                }
            }
        }
    }

    /// <summary>
    /// It reaches into what is empty, or lies at the two lanes and beyond them, where rips would part them from others: had they been parted from all others, and their common end sawn off, before the rip between them, it
    /// would be smaller. Whatever else is kept would be as it is.
    /// </summary>
    private static bool IsForTheRip(Span kept, Band under, Band over, Span empty, double kerf) =>
        kept.High > under.Low - kerf
        && kept.Low < over.High + kerf
        && (
            kept.Low < under.Low - NearMm
            || kept.High > over.High + NearMm
            || (kept.From < empty.To + kerf && kept.To > empty.From - kerf)
        );

    /// <summary>Beyond the pieces on both sides of a rip, and before them, a kerf away, as far as the rip runs.</summary>
    private static IEnumerable<Span> Empty(NestSpec spec, SawCut rip, Band under, Band over)
    {
        double from = Math.Min(under.From, over.From) - spec.KerfMm,
            to = Math.Max(under.To, over.To) + spec.KerfMm;
        if (from > rip.From.X + NearMm)
        {
            yield return new(rip.From.X, from, under.Low, over.High);
        }

        if (rip.To.X > to + NearMm)
        {
            yield return new(to, rip.To.X, under.Low, over.High);
        }
    }

    /// <summary>
    /// The largest piece kept is as large as any clear box in an end that lanes side by side, and what lies empty beside them, leave empty in common: such an
    /// end can always be had, by rips beside those lanes and then one cut across them. Of a lane by itself, in what its cuts across leave.
    /// </summary>
    public static IEnumerable<string> Smaller(NestSpec spec, BoardCutList list)
    {
        Band[] bands = [.. Bands(spec, list)];
        double largest = Offcuts.Of(spec, list).Select(o => o.AreaMm2).DefaultIfEmpty(0).Max();
        for (int i = 0; i < bands.Length; i++)
        {
            for (int j = i; j < bands.Length; j++)
            {
                Band[] these = bands[i..(j + 1)];
                double low = these[0].Low,
                    high = these[^1].High;
                // In a lane by itself ends that lean are carried on to its edges.
                double[] sawn =
                [
                    .. i < j || these[0].IsEmpty
                        ? []
                        : list
                            .Cuts.Where(c => c.Lane is { } l && list.Lanes[l].LowMm == low)
                            .SelectMany(c => Sawn(spec, c)),
                ];
                foreach (
                    Span empty in new[]
                    {
                        new Span(
                            0,
                            sawn.Append(these.Min(b => b.From) - spec.KerfMm).Min(),
                            low,
                            high
                        ),
                        new Span(
                            sawn.Append(these.Max(b => b.To) + spec.KerfMm).Max(),
                            list.Frame.LengthMm,
                            low,
                            high
                        ),
                    }
                )
                {
                    if (
                        Clear(spec, list, empty, null, null) is { } clear
                        && clear.Area > largest + (NearMm * (clear.Length + clear.Width))
                    )
                    {
                        yield return $"{list.Board.Id}: lanes leave {clear.Length:0} x {clear.Width:0} mm empty, and the largest piece kept is {largest:0} mm²";
                    }
                }
            }
        }
    }

    /// <summary>From where to where a cut across and its kerf reach along the board.</summary>
    private static IEnumerable<double> Sawn(NestSpec spec, SawCut cut)
    {
        double kerf = spec.KerfMm / Math.Cos(cut.DegreesFromSquare * Math.PI / 180);
        return cut.Kind == CutKind.Edge
            ? []
            : cut.Line.SelectMany(v => new[] { v.X - kerf, v.X + kerf });
    }

    /// <summary>Of all boxes within one whose sides lie on its own or on those of what is to be cut out: the largest that is clear, worth keeping, and holds the kerf of a rip; null where none is.</summary>
    private static Span? Clear(
        NestSpec spec,
        BoardCutList list,
        Span within,
        double? ripLow,
        double? ripHigh
    )
    {
        within = within with
        {
            From = Math.Max(0, within.From),
            To = Math.Min(list.Frame.LengthMm, within.To),
            Low = Math.Max(0, within.Low),
            High = Math.Min(list.Frame.WidthMm, within.High),
        };
        Span[] cutOut =
        [
            .. list
                .CutOuts.Where(c => c.IsEnd)
                .Select(c => new Span(c.FromMm, c.ToMm, c.LowMm, c.HighMm)),
            .. Faults(list.Frame),
        ];
        IEnumerable<Span> boxes =
            from x0 in cutOut.Select(f => f.To).Append(within.From)
            from x1 in cutOut.Select(f => f.From).Append(within.To)
            where x0 >= within.From && x1 <= within.To && x1 - x0 >= spec.LeastOffcutMm
            from y0 in cutOut.Select(f => f.High).Append(within.Low)
            from y1 in cutOut.Select(f => f.Low).Append(within.High)
            where
                y0 >= within.Low
                && y1 <= within.High
                && y1 - y0 >= spec.LeastOffcutWidthMm
                && !(y0 > ripLow)
                && !(y1 < ripHigh)
            select new Span(x0, x1, y0, y1);
        return boxes
            .Where(b =>
                !cutOut.Any(f => f.From < b.To && f.To > b.From && f.Low < b.High && f.High > b.Low)
            )
            .Select(b => (Span?)b)
            .MaxBy(b => b!.Value.Area);
    }

    /// <summary>The lanes, and what lies empty beside and between them, from the marked edge.</summary>
    private static IEnumerable<Band> Bands(NestSpec spec, BoardCutList list)
    {
        double at = 0;
        foreach (SawnLane lane in list.Lanes.OrderBy(l => l.LowMm))
        {
            // What is thinner than lanes are near to their rips is their edge's waste, and no rip parts it from them.
            if (lane.LowMm - at > spec.KerfMm + NearMm)
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

    private readonly record struct Span(double From, double To, double Low, double High)
    {
        public double Length => To - From;

        public double Width => High - Low;

        public double Area => Length * Width;
    }

    /// <summary>Pieces lie in it from so far to so far along the board.</summary>
    private sealed record Band(double Low, double High, double From, double To)
    {
        public static Band Empty(double low, double high) =>
            new(low, high, double.PositiveInfinity, double.NegativeInfinity);

        public bool IsEmpty => From > To;
    }
}
