using PlankFit.Geometry.Primitives;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Joints;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Fastenings;

/// <summary>Butts beside which nothing holds one of the two pieces on the timber that the butt lies on: what the rule keeps clear of a joint leaves no room there.</summary>
internal static class UnheldButts
{
    private const int MostNamed = 8;

    /// <param name="fastened">A layer's, a side each.</param>
    public static IEnumerable<Finding> Of(
        string where,
        FasteningRule rule,
        IEnumerable<LayerFastened> fastened,
        LengthUnit unit
    )
    {
        if (rule.Kind == FasteningKind.None)
        {
            yield break;
        }

        (JointId Id, TimberUnder Timber)[] bare = [.. fastened.SelectMany(f => On(f, rule))];
        if (bare.Length == 0)
        {
            yield break;
        }

        bool alike =
            bare.Count(b => b.Id.Plank.Side == Side.Port) * 2 == bare.Length
            && bare.All(b => bare.Any(t => t.Id == b.Id.Twin));
        (JointId Id, TimberUnder Timber)[] told =
        [
            .. bare.Where(b => !alike || b.Id.Plank.Side == Side.Starboard),
        ];
        string Mm(double mm) => FasteningFindings.Small(mm, unit);
        TimberUnder narrowest = told.MinBy(b => b.Timber.WidthMm).Timber;
        yield return new(
            Severity.Warning,
            where,
            $"nothing holds one or both pieces beside {(told.Length == 1 ? "this butt" : $"{told.Length} butts")} on the timber under it: {string.Join(", ", told.Take(MostNamed).Select(b => b.Id))}{(told.Length > MostNamed ? " and others" : "")}. "
                + $"{narrowest.Name} is {Mm(narrowest.WidthMm)} wide, and fastenings keep {Mm(rule.JointMm)} from a joint and {Mm(rule.MarginMm)} from the timber's edge: ask less of `clear-of-joints` or `clear-of-timber-edge`, butt on wider timber, or clamp them while the glue sets"
                + (alike ? "; to port likewise" : "")
        )
        {
            Rank = Rank.SawAfter,
        };
    }

    private static IEnumerable<(JointId, TimberUnder)> On(
        LayerFastened fastened,
        FasteningRule rule
    )
    {
        foreach ((int i, PlankFastenings plank) in fastened.Planks.Index())
        {
            PlankGround ground = fastened.Ground.Planks[i];
            foreach (PlankJoint joint in fastened.Ground.From.Joints[i]?.Joints ?? [])
            {
                // On a block, or on the layer below, butts are held by their glue.
                if (
                    joint.Kind == JointKind.Butt
                    && ground.Timber.FirstOrDefault(t => t.IsThere && t.Name == joint.Backing)
                        is { } timber
                    && !(IsHeld(plank, joint, rule, true) && IsHeld(plank, joint, rule, false))
                )
                {
                    yield return (joint.Id, timber);
                }
            }
        }
    }

    /// <summary>Whether a fastening stands on the piece, on the joint's timber and no further from the joint than the spacing.</summary>
    private static bool IsHeld(
        PlankFastenings plank,
        PlankJoint joint,
        FasteningRule rule,
        bool inboard
    )
    {
        Vec2 from = joint.OuterLine[0],
            across = joint.OuterLine[^1] - from;
        var beside = new Clearance();
        beside.KeepFromLine(joint.OuterLine, 0, "");
        return plank.Points.Any(p =>
            p.Use == FasteningUse.Backing
            && p.Backing == joint.Backing
            && across.Cross(p.At - from) > 0 == inboard
            && beside.At(p.At) <= rule.JointMm + rule.SpacingMm
        );
    }
}
