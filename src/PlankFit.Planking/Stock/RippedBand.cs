using System.Collections.Immutable;
using PlankFit.Geometry.Primitives;

namespace PlankFit.Planking.Stock;

/// <summary>What lies between two rips of a board: a lane, or what is left beside one.</summary>
internal sealed class RippedBand
{
    private readonly NestSpec spec;
    private readonly BoardFrame frame;
    private readonly ImmutableArray<BoardBox> taken;
    private readonly Dictionary<LaneSpan, double[]> kept = [];

    private RippedBand(
        NestSpec spec,
        BoardCutList plain,
        double lowMm,
        double highMm,
        ImmutableArray<SawCut> planed
    )
    {
        (this.spec, frame, LowMm, HighMm) = (spec, plain.Frame, lowMm, highMm);
        int[] lanes =
        [
            .. Enumerable
                .Range(0, plain.Lanes.Length)
                .Where(l =>
                    (plain.Lanes[l].LowMm + plain.Lanes[l].HighMm) / 2 is var middle
                    && middle >= lowMm
                    && middle <= highMm
                ),
        ];
        LanePieces =
        [
            .. lanes
                .SelectMany(l => plain.Lanes[l].PieceIds)
                .Select(id => plain.Board.Pieces.First(p => p.Piece.Id == id))
                .Select(p => LanePiece.Of(p, frame, spec.Saw)),
        ];
        Vec2[] points = [.. LanePieces.SelectMany(p => p.Outline)];
        Pieces = new(
            points.Select(p => p.X).DefaultIfEmpty(double.PositiveInfinity).Min(),
            points.Select(p => p.X).DefaultIfEmpty(double.NegativeInfinity).Max()
        );
        taken =
        [
            .. LanePieces.Select(p => BoardBox.Around(p.Outline).Grown(spec.KerfMm)),
            .. plain
                .Cuts.Where(c => c.Lane is { } lane && lanes.Contains(lane))
                .Select(c => KerfBox.Of(plain, c)),
            .. planed.Select(c => KerfBox.Of(plain, c)),
        ];
    }

    public double LowMm { get; }

    public double HighMm { get; }

    public ImmutableArray<LanePiece> LanePieces { get; }

    /// <summary>From the nearest corner of its pieces to the furthest; from plus to minus infinity where it has none.</summary>
    public LaneSpan Pieces { get; }

    /// <param name="plain">All rips over the whole length, then every lane.</param>
    /// <param name="rips">Those for the saw, from the marked edge.</param>
    public static IEnumerable<RippedBand> All(
        NestSpec spec,
        BoardCutList plain,
        SawCut[] rips,
        ImmutableArray<SawCut> planed
    ) =>
        Enumerable
            .Range(0, rips.Length + 1)
            .Select(b => new RippedBand(
                spec,
                plain,
                b == 0 ? 0 : rips[b - 1].From.Y + Math.Max(0, rips[b - 1].KerfMm),
                b == rips.Length
                    ? plain.Frame.WidthMm
                    : rips[b].From.Y + Math.Min(0, rips[b].KerfMm),
                planed
            ));

    /// <summary>The areas of all that is kept of it when it lies by itself and is sawn.</summary>
    public double[] KeptMm2(LaneSpan along) =>
        kept.TryGetValue(along, out double[]? areas)
            ? areas
            : kept[along] = FreeBoard.AreasMm2(
                spec,
                frame,
                new(along.FromMm, along.ToMm, LowMm, HighMm),
                taken
            );
}
