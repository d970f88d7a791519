using System.Globalization;
using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Sheathing;

/// <summary>What is said of cloth, worded once for sheets, tables and the terminal.</summary>
public static class SheathingWords
{
    /// <summary>cloth 1 core cloth.</summary>
    public static string Of(SheathedLayer layer) => $"cloth {layer.Number} {layer.Name}";

    public static string Sides(SheathedSide side) =>
        side.Holds.Length == 2 ? "both sides" : PlankWords.Of(side.Holds[0]);

    /// <summary>Where the roll is laid first, as a clause.</summary>
    public static string First(FirstLine first, LengthUnit unit) =>
        first switch
        {
            FirstLine.AlongKeel => "its edge pressed along the keel",
            FirstLine.AlongChine => "its edge pressed along the chine",
            FirstLine.Point(var station, var part) =>
                $"pinned at station {station}, at {Percent(part)} of the girth from the keel, and two straight threads laid from there",
            FirstLine.Straight(var part, var turned) =>
                $"along a straight line over the middle of the bottom at {Percent(part)} of the girth from the keel"
                    + (
                        turned == 0
                            ? ""
                            : $", its after end turned {Degrees(turned)} {(turned < 0 ? "towards" : "away from")} the keel"
                    ),
            _ => "along a line that is found",
        };

    /// <summary>What a bay asks of the builder. A dart is named where it is drawn, and nowhere else.</summary>
    public static string ToDo(SheathedLayer layer, SheathedSide side, BayShear bay) =>
        Drape.Verdict(bay.Shear.Degrees, layer.Cloth) switch
        {
            DrapeVerdict.LiesFlat => "lies flat",
            DrapeVerdict.StrokeOut => "stroke out along its diagonals",
            DrapeVerdict.PlanThePull => "plan the pull",
            _ => side.Darts.Darts.IsEmpty
                ? "too much: another first line"
                : "too much: another first line, or the darts",
        };

    /// <summary>The shear of a whole side in a sentence.</summary>
    public static string Verdict(SheathedLayer layer, SheathedSide side, LengthUnit unit)
    {
        BayShear most = side.Bays.MaxBy(b => Math.Abs(b.Shear.Degrees))!;
        return $"{(side.Holds.Length == 2 ? "On both sides" : $"On {PlankWords.Of(side.Holds[0])}")} it {Act(Drape.Verdict(most.Shear.Degrees, layer.Cloth), side)}: laid {First(side.First, unit)}, it is sheared by {Degrees(most.Shear.Degrees)} at most, between stations {most.FromStation} and {most.ToStation} ({Signed(most.Shear.Turning)} by how its first line turns, {Signed(most.Shear.Bulge)} by how the bottom curves).";
    }

    /// <summary>At which angles its two sets of threads cross chine and transom; nothing of a mat, whose threads lie every way.</summary>
    public static IEnumerable<string> Threads(SheathedLayer layer, SheathedSide side)
    {
        if (layer.Cloth.Kind == ClothKind.Mat)
        {
            yield break;
        }

        foreach (
            (PanelEdge edge, string name, bool past) in new[]
            {
                (PanelEdge.Upper, "chine", layer.Spec.RoundChineMm > 0),
                (PanelEdge.Transom, "transom", layer.Spec.RoundTransomMm > 0),
            }
        )
        {
            if (ThreadAngles.Of(side, edge) is var (first, second))
            {
                yield return $"Its two sets of threads {(past ? "cross" : "come to")} the {name} at {Between(first)} and at {Between(second)} degrees from it{(past ? "" : ", and stop there")}.";
            }
        }
    }

    private static string Between(ThreadAngles angles) =>
        Whole(angles.Least) is var least && Whole(angles.Most) is var most && least == most
            ? least
            : $"{least} to {most}";

    private static string Whole(double degrees) => NumberText.Trimmed(degrees, 0);

    private static string Act(DrapeVerdict verdict, SheathedSide side) =>
        verdict switch
        {
            DrapeVerdict.LiesFlat => "lies flat by itself",
            DrapeVerdict.StrokeOut => "follows where it is stroked out along its diagonals",
            DrapeVerdict.PlanThePull => "follows where its pull is planned, tried dry first",
            _ => side.Darts.Darts.IsEmpty
                ? "will not lie: give another first line (for a dart no place was found)"
                : "will not lie: give another first line, or cut the darts that are drawn",
        };

    public static string Degrees(double degrees) => $"{Plain(Math.Abs(degrees))} degrees";

    /// <summary>With its sign: more than nought where it gathers along the roll.</summary>
    public static string Signed(double degrees) =>
        Plain(Math.Abs(degrees)) is var size && size == "0" ? "0"
        : degrees < 0 ? $"−{size}"
        : $"+{size}";

    public static string Plain(double degrees) => NumberText.Trimmed(degrees, 1);

    public static string Percent(double part) =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Round(100 * part)} %");

    /// <summary>Which way a piece lies on the roll against how it lies on the boat, outer face up.</summary>
    public static string Lies(PieceOnRoll piece) =>
        (piece.Turned, piece.Over) switch
        {
            (false, false) => "as drawn",
            (true, false) => "end for end",
            (false, true) => "outer face down",
            _ => "end for end, outer face down",
        };

    /// <summary>The way to the bow on the roll, a unit direction.</summary>
    public static Vec2 BowOnRoll(PieceOnRoll piece) =>
        (piece.OnRoll(piece.Piece.Bow) - piece.OnRoll(default)).Unit();

    /// <summary>The same in words, the roll's beginning to the left.</summary>
    public static string Bow(PieceOnRoll piece)
    {
        Vec2 bow = BowOnRoll(piece);
        return Math.Abs(bow.X) > Math.Abs(bow.Y)
            ? (bow.X > 0 ? "to the right" : "to the left")
            : (bow.Y > 0 ? "up" : "down");
    }

    /// <summary>Which way its faces lie on the boat.</summary>
    public static string Face(SheathedLayer layer) =>
        layer.Spec.Face switch
        {
            Facing.ToTheWood => $"{Faced(layer.Cloth)} to the wood",
            Facing.Outward => $"{Faced(layer.Cloth)} outward",
            _ when layer.Cloth.MayTurnOver => "either face outward",
            _ => "upper face of the roll outward",
        };

    /// <summary>The same of those layers for which the job says it, as sentences.</summary>
    public static IEnumerable<string> FacesOnTheBoat(IEnumerable<SheathedLayer> layers) =>
        layers
            .Where(l => l.Spec.Face is not null)
            .Select(l => $"On the boat {Of(l)} lies with its {Face(l)}.");

    /// <summary>How a roll lies on the floor as it is cut.</summary>
    public static string Unrolled(RollPlan plan) =>
        plan.Unrolled switch
        {
            Facing.ToTheWood => $"{Faced(plan.Cloth)} down",
            Facing.Outward => $"{Faced(plan.Cloth)} up",
            _ when plan.Cloth.MayTurnOver => "either face up",
            _ => "upper face of the roll up",
        };

    /// <summary>What its faces are told apart by.</summary>
    private static string Faced(ClothSpec cloth) => cloth.HasMatFace ? "mat" : "stitching";

    /// <summary>How lengths of rolls are rounded, as a clause.</summary>
    public static string OrderedUp(LengthUnit unit) =>
        LengthUnits.IsMetric(unit) ? "up to a whole 10 mm" : "up to a whole inch";

    /// <summary>What the pieces' area takes of the roll, as roughly as rolls are ordered.</summary>
    public static string AreaBound(RollPlan plan, LengthUnit unit) =>
        LengthText.ToOrder(plan.AreaBoundMm, unit);

    /// <summary>On a roll, when what is used of it is cut off as it is ordered.</summary>
    public static string Left(CutRoll roll, LengthUnit unit) =>
        LengthText.ForPaper(
            Math.Max(0, roll.Roll.LengthMm - LengthText.ToOrderMm(roll.UsedMm, unit)),
            unit
        );

    public static string Roll(CutRoll roll) =>
        $"roll {roll.Number}, {(roll.OnHand ? "on hand" : "to buy")}";

    public static string Kind(ClothMark mark) =>
        mark.Kind switch
        {
            ClothMarkKind.FirstLine => "the roll's own line lies on it",
            ClothMarkKind.Join => "edge of the course that lies on top",
            _ => "its centre, to show through",
        };

    public static string Side(Side side) => PlankWords.Of(side);
}
