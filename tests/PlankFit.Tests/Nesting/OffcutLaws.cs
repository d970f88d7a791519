using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Stock;
using PlankFit.Tests.Support;
using Shape = NetTopologySuite.Geometries.Geometry;

namespace PlankFit.Tests.Nesting;

/// <summary>What is listed as left over can be had from the board as it is sawn, as polygons of NetTopologySuite.</summary>
internal static class OffcutLaws
{
    private const double NearMm = 1e-6;

    private static readonly GeometryFactory Nts = new();

    public static IEnumerable<string> Broken(NestSpec spec, SawnBoard board)
    {
        StockBoard stock = board.Stock;
        BoardCutList cuts = BoardCuts.Of(board, spec);
        ImmutableArray<Offcut> kept = Offcuts.Of(spec, cuts);
        Shape usable = Box(stock.MarkedEndMm, stock.LengthMm - stock.OtherEndMm, 0, stock.WidthMm);
        foreach (Offcut offcut in kept)
        {
            Shape box = Box(offcut.FromMm, offcut.ToMm, offcut.LowMm, offcut.HighMm);
            if (!usable.Buffer(NearMm).Contains(box))
            {
                yield return $"{offcut.Id} is not within what of {board.Id} is usable";
            }

            (double along, double across) = stock.GrainAcross
                ? (offcut.HighMm - offcut.LowMm, offcut.ToMm - offcut.FromMm)
                : (offcut.ToMm - offcut.FromMm, offcut.HighMm - offcut.LowMm);
            if (
                Math.Abs(along - offcut.LengthMm) > NearMm
                || Math.Abs(across - offcut.WidthMm) > NearMm
                || along < spec.LeastOffcutMm
                || across < spec.LeastOffcutWidthMm
            )
            {
                yield return $"{offcut.Id} is {along:0.00} x {across:0.00} mm, listed as {offcut.LengthMm:0.00} x {offcut.WidthMm:0.00}";
            }

            if (!SawnOff(cuts, offcut) && !board.Lanes.All(l => IsClear(spec, stock, l, offcut)))
            {
                yield return $"{offcut.Id} is ripped asunder";
            }

            if (
                stock.Faults.Any(f =>
                    Box(f.FromMm, f.ToMm, f.LowMm ?? 0, f.HighMm ?? stock.WidthMm).Common(box).Area
                    > NearMm * box.Length
                )
            )
            {
                yield return $"{offcut.Id} has a fault in it";
            }

            BoardFrame frame = cuts.Frame;
            Shape inFrame = Hull(
                frame.Of(new Vec2(offcut.FromMm, offcut.LowMm)),
                frame.Of(new Vec2(offcut.ToMm, offcut.HighMm))
            );
            // What is sawn off already is not under the saw when the lanes are.
            foreach (
                SawCut cut in cuts.Cuts.TakeWhile(c => c.Lane is null || !SawnOff(cuts, offcut))
            )
            {
                if (Kerfs(cut).Any(k => k.Common(inFrame).Area > NearMm * inFrame.Length))
                {
                    yield return $"{offcut.Id} is sawn through by cut {cut.Number}";
                }
            }

            foreach (
                Shape other in board
                    .Pieces.Select(p => (Shape)BoardLaws.Shape(p.Outline))
                    .Concat(
                        kept.TakeWhile(o => o != offcut)
                            .Select(o => Box(o.FromMm, o.ToMm, o.LowMm, o.HighMm))
                    )
            )
            {
                if (other.Distance(box) < spec.KerfMm - NearMm)
                {
                    yield return $"{offcut.Id} is {other.Distance(box):0.000} mm from something else of {board.Id}";
                }
            }
        }
    }

    /// <summary>It lies beyond a cut that takes an empty end off, or before one at the near end, across all of it, and whatever is sawn after that at its height ends there.</summary>
    private static bool SawnOff(BoardCutList cuts, Offcut offcut)
    {
        Vec2 a = cuts.Frame.Of(new Vec2(offcut.FromMm, offcut.LowMm)),
            b = cuts.Frame.Of(new Vec2(offcut.ToMm, offcut.HighMm));
        double from = Math.Min(a.X, b.X),
            to = Math.Max(a.X, b.X),
            low = Math.Min(a.Y, b.Y),
            high = Math.Max(a.Y, b.Y);
        return cuts.Cuts.Any(end =>
            end.Kind == CutKind.EndOff
            && (
                end.IsNearEnd
                    ? to <= end.From.X + end.KerfMm + NearMm
                    : from >= end.From.X + end.KerfMm - NearMm
            )
            && low >= end.From.Y - NearMm
            && high <= end.To.Y + NearMm
            && cuts.Cuts.Skip(end.Number)
                .Where(c =>
                    c.Line.Max(v => v.Y) > low + NearMm && c.Line.Min(v => v.Y) < high - NearMm
                )
                .All(c =>
                    end.IsNearEnd
                        ? c.Line.Min(v => v.X) >= end.From.X - NearMm
                        : c.Line.Max(v => v.X) <= end.From.X + NearMm
                )
        );
    }

    /// <summary>
    /// Lanes are ripped over the whole board, so that what is kept lies within one, or a kerf clear of it. Two lanes hardly more than a kerf apart are parted by
    /// one rip along the lower one, and an edge hardly off the board's is not ripped: there what is kept may be so much wider than its lane.
    /// </summary>
    private static bool IsClear(NestSpec spec, StockBoard stock, SawnLane lane, Offcut offcut)
    {
        const double Hardly = 0.3;
        (double low, double high, double width) = stock.GrainAcross
            ? (offcut.FromMm, offcut.ToMm, stock.LengthMm)
            : (offcut.LowMm, offcut.HighMm, stock.WidthMm);
        double over = width - lane.HighMm <= Hardly ? Hardly : 0;
        bool within = low >= lane.LowMm - Hardly - NearMm && high <= lane.HighMm + over + NearMm;
        return within
            || low >= lane.HighMm + spec.KerfMm - NearMm
            || high <= lane.LowMm - spec.KerfMm + NearMm;
    }

    /// <summary>What the saw turns to dust, stretch by stretch: on the far side of the line, along the board or up from it, or on the near one.</summary>
    private static IEnumerable<Shape> Kerfs(SawCut cut)
    {
        for (int i = 1; i < cut.Line.Length; i++)
        {
            Vec2 from = cut.Line[i - 1],
                to = cut.Line[i],
                way = (to - from).Unit(),
                across = new(-way.Y, way.X);
            bool along = cut.Kind is CutKind.Rip or CutKind.Edge;
            double far = along ? across.Y : across.X;
            Vec2 kerf = (far < 0 ? -1 : 1) * cut.KerfMm * across;
            if (!along && cut.Line.Length == 2 && Math.Abs(across.X) > 0.1)
            {
                // Sawn from edge to edge of its lane, its kerf is wider along the grain the more it leans.
                kerf = new(cut.KerfMm / Math.Abs(across.X), 0);
            }

            if (from.ChordTo(to) > NearMm && kerf.Norm > NearMm)
            {
                yield return Nts.CreatePolygon([
                    new(from.X, from.Y),
                    new(to.X, to.Y),
                    new((to + kerf).X, (to + kerf).Y),
                    new((from + kerf).X, (from + kerf).Y),
                    new(from.X, from.Y),
                ]);
            }
        }
    }

    private static Shape Hull(Vec2 a, Vec2 b) =>
        Box(Math.Min(a.X, b.X), Math.Max(a.X, b.X), Math.Min(a.Y, b.Y), Math.Max(a.Y, b.Y));

    private static Shape Box(double x0, double x1, double y0, double y1) =>
        Nts.ToGeometry(new Envelope(x0, x1, y0, y1));
}
