using PlankFit.Export.Joints;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Comparing;

/// <summary>A figure and the plank that it is greatest at; null where no plank has any.</summary>
public readonly record struct WorstOf(double Value, PlankId? At);

/// <summary>
/// A lay-out in the figures by which it is held against others, of both sides and all panels: taken from its planks as lists and summary take them, nothing is worked out
/// anew. What is sawn or fitted already is left out of numbers and stock.
/// </summary>
public sealed record LaidFigures
{
    /// <summary>To be sawn; those that are refused are among them.</summary>
    public required int Planks { get; init; }

    /// <summary>Lengths to cut of all planks, or of their pieces, added up, before any plan of cutting.</summary>
    public required double StockMm { get; init; }

    /// <summary>The same by the width of each layer's stock.</summary>
    public required double StockMm2 { get; init; }

    /// <summary>What of that is no plank when it is trimmed on the hull.</summary>
    public required double WasteMm2 { get; init; }

    public required int Tapered { get; init; }

    /// <summary>The greatest fibre strain from bending, percent, and what is to be done about it in words; empty where every plank lies flat.</summary>
    public required WorstOf Bend { get; init; }

    public required string Verdict { get; init; }

    /// <summary>Between straight edges, mm.</summary>
    public required WorstOf Gap { get; init; }

    /// <summary>By which a plank's angle at the keel, or at its panel's lower edge, leaves what its layer asks for, degrees.</summary>
    public required WorstOf Drift { get; init; }

    /// <summary>Planks that are not to be sawn at all, since they cannot be bent to their places.</summary>
    public required int Refused { get; init; }

    /// <summary>What was found that stands before any sawing.</summary>
    public required int DoNotSaw { get; init; }

    /// <summary>Null where no plan of cutting was made.</summary>
    public BoardFigures? Boards { get; init; }

    public double WastePercent => StockMm2 > 0 ? 100 * WasteMm2 / StockMm2 : 0;

    /// <param name="findings">What a person is told of the plan, its table among it.</param>
    public static LaidFigures Of(BottomPlan plan, IEnumerable<Finding> findings)
    {
        (PlankLayerPlan Layer, Plank Plank)[] all =
        [
            .. plan.AllPlankLayers.SelectMany(l =>
                l.Layer.Starboard.Concat(l.Layer.Port).Select(p => (l.Layer, p))
            ),
        ];
        (PlankLayerPlan Layer, Plank Plank)[] toSaw = [.. all.Where(p => !p.Plank.IsFixed)];
        double Stock(Plank p) => JointWords.StockMm(plan.PanelOf(p.Id), p);
        double stockMm2 = toSaw.Sum(p => Stock(p.Plank) * p.Layer.Planks.WidthMm);
        Plank[] planks = [.. all.Select(p => p.Plank)];
        Plank? hardest = planks.MaxBy(p => p.Bend.StrainPercent);
        return new()
        {
            Planks = toSaw.Length,
            StockMm = toSaw.Sum(p => Stock(p.Plank)),
            StockMm2 = stockMm2,
            WasteMm2 = stockMm2 - toSaw.Sum(p => p.Plank.AreaMm2),
            Tapered = toSaw.Count(p => p.Plank.Kind == PlankKind.Tapered),
            Bend = new(hardest?.Bend.StrainPercent ?? 0, hardest?.Id),
            Verdict = hardest?.Bend.Verdict ?? "",
            Gap = Worst(all, p => p.Plank.WidestGapMm),
            Drift = Worst(
                all,
                p =>
                    p.Plank.KeelAngleDegrees is { } angle
                        ? Math.Abs(angle - p.Layer.Planks.AngleDegrees)
                        : 0
            ),
            Refused = planks.Count(p => p.IsRefused),
            DoNotSaw = findings.Count(f => f.Rank == Rank.DoNotSaw),
            Boards = plan.Nest is { } nest ? BoardFigures.Of(nest) : null,
        };
    }

    private static WorstOf Worst(
        (PlankLayerPlan Layer, Plank Plank)[] planks,
        Func<(PlankLayerPlan Layer, Plank Plank), double> of
    )
    {
        (PlankLayerPlan Layer, Plank Plank) worst = planks.MaxBy(of);
        return planks.Length > 0 && of(worst) is > 0 and var value
            ? new(value, worst.Plank.Id)
            : new(0, null);
    }
}

/// <summary>What a plan of cutting takes.</summary>
/// <param name="Boards">That are cut into.</param>
/// <param name="Mm2">Of these.</param>
/// <param name="Unplaced">Pieces that no board can give.</param>
public sealed record BoardFigures(int Boards, double Mm2, int Unplaced)
{
    public static BoardFigures Of(NestPlan nest) =>
        new(nest.Boards.Length, nest.Boards.Sum(b => b.Stock.AreaMm2), nest.Unplaced.Length);
}
