using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Comparing;

/// <summary>One of the things by which lay-outs are held against each other; the less the better.</summary>
/// <param name="Name">As it is asked for: waste.</param>
/// <param name="Head">Over its column and along its axis, with its unit where that is not the job's own.</param>
/// <param name="Step">Differences smaller than this do not show in lists, and are none.</param>
/// <param name="Of">Null where a lay-out has no such figure.</param>
/// <param name="Words">As lists and the terminal have it.</param>
public sealed record Measure(
    string Name,
    string Head,
    double Step,
    Func<LaidFigures, double?> Of,
    Func<LaidFigures, LengthUnit, string> Words
)
{
    public static readonly Measure Planks = new(
        "planks",
        "planks to saw",
        1,
        f => f.Planks,
        (f, _) => $"{f.Planks}"
    );

    public static readonly Measure Waste = new(
        "waste",
        "waste",
        1e4,
        f => f.WasteMm2,
        (f, unit) => $"{PlanWords.Area(f.WasteMm2, unit)}, {NumberText.Padded(f.WastePercent, 1)} %"
    )
    {
        OnAxis = unit =>
            LengthUnits.IsMetric(unit)
                ? (1e6, "m²")
                : (LengthUnits.MmPerFoot * LengthUnits.MmPerFoot, "sq ft"),
    };

    public static readonly Measure Stock = new(
        "stock",
        "stock to cut",
        100,
        f => f.StockMm,
        (f, unit) => PlanWords.Stock(f.StockMm, unit)
    )
    {
        OnAxis = unit => LengthUnits.IsMetric(unit) ? (1000, "m") : (LengthUnits.MmPerFoot, "ft"),
    };

    public static readonly Measure Tapers = new(
        "tapers",
        "tapered",
        1,
        f => f.Tapered,
        (f, _) => $"{f.Tapered}"
    );

    public static readonly Measure Bend = new(
        "bend",
        "worst bend",
        0.01,
        f => f.Bend.Value,
        (f, _) =>
            f.Bend.At is { } at && f.Bend.Value >= 0.005
                ? $"{NumberText.Padded(f.Bend.Value, 2)} % at {at}: {f.Verdict}"
                : "every plank lies flat"
    )
    {
        OnAxis = _ => (1, "% strain"),
    };

    public static readonly Measure Gap = new(
        "gap",
        "widest gap",
        0.1,
        f => f.Gap.Value,
        (f, unit) =>
            f.Gap.At is { } at && f.Gap.Value >= 0.05
                ? $"{LengthText.Fine(f.Gap.Value, Fine(unit))} at {at}"
                : "none"
    )
    {
        OnAxis = unit => LengthUnits.IsMetric(unit) ? (1, "mm") : (LengthUnits.MmPerInch, "in"),
    };

    public static readonly Measure Drift = new(
        "drift",
        "drift of angle",
        0.1,
        f => f.Drift.Value,
        (f, _) =>
            f.Drift.At is { } at && f.Drift.Value >= 0.05
                ? $"{AngleText.Exact(f.Drift.Value)} at {at}"
                : "none"
    )
    {
        OnAxis = _ => (1, "degrees"),
    };

    public static readonly Measure Refused = new(
        "refused",
        "refused",
        1,
        f => f.Refused,
        (f, _) => $"{f.Refused}"
    );

    public static readonly Measure DoNotSaw = new(
        "do-not-saw",
        "do not saw",
        1,
        f => f.DoNotSaw,
        (f, _) => $"{f.DoNotSaw}"
    );

    public static readonly Measure Unplaced = new(
        "unplaced",
        "without a place",
        1,
        f => f.Boards?.Unplaced ?? 0,
        (f, _) => $"{f.Boards?.Unplaced ?? 0}"
    );

    public static readonly Measure Boards = new(
        "boards",
        "boards",
        1,
        f => f.Boards?.Boards,
        (f, unit) =>
            f.Boards is { } b
                ? $"{b.Boards}, {PlanWords.Area(b.Mm2, unit)}"
                    + (b.Unplaced > 0 ? $", {b.Unplaced} without a place" : "")
                : ""
    );

    /// <summary>In the order in which they are told.</summary>
    public static readonly ImmutableArray<Measure> All =
    [
        Planks,
        Stock,
        Waste,
        Tapers,
        Bend,
        Gap,
        Drift,
        Boards,
    ];

    /// <summary>By these lay-outs are held against each other whatever else is asked: none is better for having more planks that cannot be sawn.</summary>
    public static readonly ImmutableArray<Measure> Always = [Refused, DoNotSaw, Unplaced];

    /// <summary>By its name; null where there is none.</summary>
    public static Measure? Find(string name) => All.FirstOrDefault(m => m.Name == name);

    /// <summary>What one is worth on a chart of the job's units, and its name there; of a mere count one, and none.</summary>
    public Func<LengthUnit, (double Worth, string Name)> OnAxis { get; init; } = _ => (1, "");

    /// <summary>The figure in whole steps.</summary>
    public double InSteps(LaidFigures figures) =>
        Of(figures) is { } value
            ? Math.Round(value / Step, MidpointRounding.AwayFromZero)
            : double.PositiveInfinity;

    /// <summary>Tenths of a millimetre say little in metres.</summary>
    private static LengthUnit Fine(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? LengthUnit.Millimetre : unit;
}
