using PlankFit.Export.Words;
using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Joints;

/// <summary>Joints and pieces in the words of the bench.</summary>
public static class JointWords
{
    public static string Of(JointKind kind) => kind == JointKind.Butt ? "butt" : "scarf";

    /// <summary>What a rule speaks of, as the job file names it.</summary>
    public static string Of(JointRuleKind what) =>
        what switch
        {
            JointRuleKind.NextPlank => "next plank",
            JointRuleKind.OneBetween => "one plank between",
            JointRuleKind.SameBacking => "same backing",
            JointRuleKind.JointsBelow => "joints below",
            _ => "seams below",
        };

    private static string Asked(JointRuleKind what) =>
        what switch
        {
            JointRuleKind.NextPlank => "the distance to the joints of the next plank",
            JointRuleKind.OneBetween => "the distance to joints with one plank between",
            JointRuleKind.SameBacking => "planks between joints on the same backing",
            JointRuleKind.JointsBelow => "the distance to the joints of the layer below",
            _ => "the distance to a seam of the layer below that a joint runs with",
        };

    /// <summary>What a rule asks, in a sentence with its source.</summary>
    public static string Sentence(JointRule rule, LengthUnit unit)
    {
        string least = LengthText.ForPaper(rule.DistanceMm ?? 0, unit, rule.Told);
        string asked = rule.What switch
        {
            JointRuleKind.NextPlank =>
                $"from the joints of the next plank, along the planks: at least {least}",
            JointRuleKind.OneBetween =>
                $"from joints with one plank between, along the planks: at least {least}",
            JointRuleKind.SameBacking =>
                $"between joints on the same backing: at least {PlanWords.Count(rule.Count ?? 0, "whole plank")}"
                    + (
                        rule.DistanceMm is null
                            ? ""
                            : $" (without timber of a name behind them, those within {least} of each other along the hull)"
                    ),
            JointRuleKind.JointsBelow => $"from the joints of the layer below: at least {least}",
            _ => $"from a seam of the layer below that the joint runs with: at least {least}",
        };
        return $"{char.ToUpperInvariant(asked[0])}{asked[1..]} ({rule.Source}).";
    }

    /// <summary>What the rules that come with the program are for.</summary>
    public static string Of(Skin skin) =>
        skin == Skin.GluedLayers ? "layers glued on each other" : "planks on frames";

    /// <summary>Rules of the program for which the job asks for nothing; nothing where it does so for none.</summary>
    public static IEnumerable<string> SwitchedOff(JointSpec? spec) =>
        from rule in spec?.SwitchedOff ?? []
        select $"Switched off: nothing is asked of {Asked(rule.What)} ({rule.Source}).";

    /// <summary>How much of a rule there is at a joint, with what it is nearest to: 412 mm (S2-24a/b); 2 (S2-26a/b).</summary>
    public static string Distance(JointDistance distance, LengthUnit unit) =>
        (
            distance.Between is { } between
                ? NumberText.Trimmed(between, 0)
                : LengthText.PaperNumber(distance.DistanceMm ?? 0, unit)
        ) + $" ({distance.To})";

    /// <summary>square; 43.5° from square, S2-22a longer on its forward edge by 140 mm.</summary>
    public static string Cut(Plank plank, PlankJoint joint, LengthUnit unit)
    {
        Vec2 line = joint.OuterLine[1] - joint.OuterLine[0];
        double fall = Math.Abs(line.X);
        if (Math.Abs(90 - joint.CutDegrees) < EndReading.SquareWithinDegrees)
        {
            return "square";
        }

        // The piece inboard reaches further on the side to which the line runs outboard.
        bool positive = line.X > 0;
        string edge = EndWords.Edge(EndReading.Along(plank.Side, positive));
        return $"{AngleText.ForPaper(Math.Abs(90 - joint.CutDegrees))} from square, piece {Inboard(joint)} longer on its {edge} edge by {PlankWords.Small(fall, unit)}";
    }

    /// <summary>The joint in a sentence: Butt a/b on stringer 2: 43.5° from square ...; Scarf a/b, 8:1, 72 mm long: a tapered on its inner face, b on its outer.</summary>
    public static string Sentence(Plank plank, PlankJoint joint, LengthUnit unit)
    {
        string name = joint.Id.Pair;
        return joint.Kind == JointKind.Butt
            ? $"Butt {name} on {joint.Backing}: {Cut(plank, joint, unit)}."
            : $"Scarf {name}, {NumberText.Trimmed(joint.Ratio ?? 0, 1)}:1, {PlankWords.Small(joint.LengthMm, unit)} long: "
                + $"{Inboard(joint)} tapered on its {joint.TaperedFace(true)} face, {joint.Id.Outboard} on its {joint.TaperedFace(false)}.";
    }

    /// <summary>All pieces with their lengths: 2 pieces: a 1250 mm, b 480 mm.</summary>
    public static string Pieces(JointedPlank plank, LengthUnit unit) =>
        $"{plank.Pieces.Length} pieces: "
        + string.Join(
            ", ",
            plank.Pieces.Select(p =>
                $"{p.Id.Letter} {LengthText.ForPaper(p.LengthMm, unit, RoundTo.Up)}"
            )
        );

    /// <summary>butted on stringer 1, stringer 3; scarfed 8:1.</summary>
    public static string Joined(JointedPlank plank) =>
        plank.Joints[0].Kind == JointKind.Butt
            ? $"butted on {string.Join(", ", plank.Joints.Select(j => j.Backing).Distinct())}"
            : $"scarfed {NumberText.Trimmed(plank.Joints[0].Ratio ?? 0, 1)}:1";

    /// <summary>Everything about a plank's pieces, a sentence each; nothing for a plank of one piece.</summary>
    public static IEnumerable<string> Sentences(BottomPlan plan, Plank plank)
    {
        if (plan.Joints.On(plank.Id) is not { } pieced)
        {
            yield break;
        }

        yield return Pieces(pieced, plan.Job.Units) + ".";
        foreach (PlankJoint joint in pieced.Joints)
        {
            yield return Sentence(plank, joint, plan.Job.Units);
        }
    }

    /// <summary>What a plank asks of boards: the lengths of its pieces, or its own where it is of one, mm.</summary>
    public static double StockMm(BottomPlan plan, Plank plank) =>
        plan.Joints.On(plank.Id)?.Pieces.Sum(p => p.LengthMm) ?? plank.CutLengthMm;

    private static char Inboard(PlankJoint joint) => joint.Id.Inboard;
}
