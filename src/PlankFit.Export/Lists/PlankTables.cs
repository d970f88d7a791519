using System.Collections.Immutable;
using PlankFit.Export.Planks;
using PlankFit.Export.Tables;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Lists;

/// <summary>
/// The lists of a plan. Each size stands twice: as the bench reads it, in the job's unit and on paper's steps, lengths rounded up, and as a plain number of
/// millimetres or degrees for those who reckon on with it.
/// </summary>
public static class PlankTables
{
    private const double Sentence = 44;
    private const double Short = 11;

    /// <summary>One row a plank, inside layer first, starboard before port, from forward.</summary>
    public static Table Planks(BottomPlan plan) =>
        TableOf.Build(
            "planks",
            [.. Head, .. OnPaper(Names(plan)), .. InNumbers(Names(plan))],
            PlankRow.All(plan)
        );

    /// <summary>One row an end, for planks that meet more than two edges.</summary>
    public static Table Ends(BottomPlan plan) =>
        TableOf.Build("ends", EndColumns, PlankRow.All(plan).SelectMany(p => p.Ends));

    private static readonly ImmutableArray<ColumnOf<PlankRow>> Head =
    [
        new("plank", 9, r => r.Plank.Id.ToString()),
        new("side", Short, r => PlankWords.Of(r.Plank.Side)),
        new("layer", 7, r => LayerNumber.Of(r.Layer)),
        new("layer name", 12, r => r.Layer.Planks.Name),
        new("number", 8, r => r.Plank.Number),
        new("kind", 12, r => PlankWords.Of(r.Plank.Kind)),
    ];

    /// <summary>What the two ends of a plank are called in heads of columns: a topside's are its lower and its upper one.</summary>
    private static (string Inboard, string Outboard, string Angle) Names(BottomPlan plan) =>
        plan.Others.IsEmpty
            ? ("inboard", "outboard", "angle at keel deg")
            : ("inboard or lower", "outboard or upper", "angle at keel or lower edge deg");

    private static ImmutableArray<ColumnOf<PlankRow>> OnPaper(
        (string Inboard, string Outboard, string Angle) ends
    ) =>
        [
            new(
                "net length",
                14,
                r => LengthText.ForPaper(r.Plank.NetLengthMm, r.Unit, RoundTo.Up)
            ),
            new(
                "length to cut",
                14,
                r => LengthText.ForPaper(r.Plank.CutLengthMm, r.Unit, RoundTo.Up)
            ),
            new("widest", 12, r => PlankWords.Small(r.Plank.WidestMm, r.Unit, RoundTo.Up)),
            new("narrowest", 12, r => PlankWords.Small(r.Plank.NarrowestMm, r.Unit)),
            .. EndOnPaper(ends.Inboard, outboard: false),
            .. EndOnPaper(ends.Outboard, outboard: true),
            new("forward edge", 16, r => PlankWords.Edge(r.Plank.ForwardEdge, r.Unit)),
            new("after edge", 16, r => PlankWords.Edge(r.Plank.AfterEdge, r.Unit)),
            new("straight stock serves", 12, r => YesNo(r.Plank.StraightEdges)),
            new("bend", 18, r => r.Plank.Bend.Verdict),
            new(
                "least radius",
                13,
                r =>
                    r.Plank.Bend.LeastRadiusMm is { } radius
                        ? PlankWords.Radius(radius, r.Unit)
                        : "flat"
            ),
            new("fits both ends", Short, r => YesNo(r.Plank.FitBothEnds)),
            new(
                "drops in",
                Short,
                r => r.Plank.DropsIn is { } drops ? YesNo(drops) : TableCell.Empty
            ),
            new("notes", 60, r => r.Notes),
        ];

    private static ImmutableArray<ColumnOf<PlankRow>> InNumbers(
        (string Inboard, string Outboard, string Angle) ends
    ) =>
        [
            new("net length mm", Short, r => r.Plank.NetLengthMm, 2),
            new("length to cut mm", Short, r => r.Plank.CutLengthMm, 2),
            new("widest mm", Short, r => r.Plank.WidestMm, 2),
            new("narrowest mm", Short, r => r.Plank.NarrowestMm, 2),
            .. EndInNumbers(ends.Inboard, outboard: false),
            .. EndInNumbers(ends.Outboard, outboard: true),
            new("forward round mm", Short, r => r.Plank.ForwardEdge.RoundMm, 3),
            new("forward hollow mm", Short, r => r.Plank.ForwardEdge.HollowMm, 3),
            new("after round mm", Short, r => r.Plank.AfterEdge.RoundMm, 3),
            new("after hollow mm", Short, r => r.Plank.AfterEdge.HollowMm, 3),
            new("widest gap mm", Short, r => r.Plank.WidestGapMm, 3),
            new("widest overlap mm", Short, r => r.Plank.WidestOverlapMm, 3),
            new("least radius mm", Short, r => r.Plank.Bend.LeastRadiusMm, 0),
            new("fibre strain %", Short, r => r.Plank.Bend.StrainPercent, 4),
            new("edge strain %", Short, r => r.Plank.Bend.EdgeStrainPercent, 4),
            new("twist deg/m", Short, r => r.Plank.Bend.TwistDegreesPerMetre, 2),
            new(ends.Angle, Short, r => r.Plank.KeelAngleDegrees, 2),
            new("area mm2", 13, r => r.Plank.AreaMm2, 0),
        ];

    private static readonly ImmutableArray<ColumnOf<EndRow>> EndColumns =
    [
        new("plank", 9, e => e.Plank.Id.ToString()),
        new("faces", Short, e => Facing(e)),
        new("at", Short, e => e.End.Word),
        new("cut", 26, e => EndWords.Cut(e.End, e.Unit)),
        new("angle", Sentence, e => EndWords.FromSquare(e.Plank.Id, e.Reading)),
        new("fall", Sentence, e => EndWords.Fall(e.Reading, e.Unit)),
        new("bevel", Sentence, e => e.Bevel),
        new("cut deg", Short, e => e.End.CutDegrees, 2),
        new("from square deg", Short, e => e.Reading.DegreesFromSquare, 2),
        new("fall mm", Short, e => e.Reading.FallMm, 2),
        new("across mm", Short, e => e.Reading.AcrossMm, 2),
        new("bevel deg", Short, e => e.End.BevelDegrees, 2),
        new("bevel at forward corner deg", Short, e => Forward(e), 2),
        new("bevel at after corner deg", Short, e => After(e), 2),
        new("longer face by mm", Short, e => e.Reading.FaceLongerByMm, 2),
        new("left long mm", Short, e => e.End.OverhangMm, 2),
        new("allowance mm", Short, e => e.End.AllowanceMm, 2),
    ];

    private static IEnumerable<ColumnOf<PlankRow>> EndOnPaper(string name, bool outboard) =>
        [
            new($"{name} end at", Short, r => Joined(r, outboard, e => e.End.Word)),
            new($"{name} cut", 22, r => Joined(r, outboard, e => EndWords.Cut(e.End, e.Unit))),
            new(
                $"{name} angle",
                Sentence,
                r => Joined(r, outboard, e => EndWords.FromSquare(e.Plank.Id, e.Reading))
            ),
            new(
                $"{name} fall",
                Sentence,
                r => Joined(r, outboard, e => EndWords.Fall(e.Reading, e.Unit))
            ),
            new($"{name} bevel", 36, r => Joined(r, outboard, e => e.Bevel)),
        ];

    private static IEnumerable<ColumnOf<PlankRow>> EndInNumbers(string name, bool outboard) =>
        [
            new(
                $"{name} from square deg",
                Short,
                r => r.Main(outboard)?.Reading.DegreesFromSquare,
                2
            ),
            new($"{name} fall mm", Short, r => r.Main(outboard)?.Reading.FallMm, 2),
            new($"{name} bevel deg", Short, r => r.Main(outboard)?.End.BevelDegrees, 2),
        ];

    /// <summary>Where a plank meets two edges at one end, both are told, parted by a stroke.</summary>
    private static string Joined(PlankRow row, bool outboard, Func<EndRow, string> word) =>
        string.Join(" / ", row.Facing(outboard).Select(word));

    private static string Facing(EndRow end) =>
        (end.Layer.Panel.HasKeel, end.Reading.FacesOutboard) switch
        {
            (true, true) => "outboard",
            (true, false) => "inboard",
            (false, true) => "upper",
            (false, false) => "lower",
        };

    private static string YesNo(bool yes) => yes ? "yes" : "no";

    private static double Forward(EndRow e) =>
        e.Plank.Side == Side.Starboard ? e.End.BevelAtLeastN : e.End.BevelAtGreatestN;

    private static double After(EndRow e) =>
        e.Plank.Side == Side.Starboard ? e.End.BevelAtGreatestN : e.End.BevelAtLeastN;
}
