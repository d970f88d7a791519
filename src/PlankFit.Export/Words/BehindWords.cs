using System.Collections.Immutable;
using PlankFit.Planking;

namespace PlankFit.Export;

/// <summary>What lies behind a plank, in words.</summary>
internal static class BehindWords
{
    public static string Of(BehindKind kind) =>
        kind switch
        {
            BehindKind.Stringer => "stringer",
            BehindKind.Frame => "frame",
            BehindKind.Floor => "floor",
            BehindKind.Solid => "keep solid",
            _ => "keep open",
        };

    /// <summary>As it stands on a pattern: a place says what is asked of it.</summary>
    public static string Name(BehindSpec of) =>
        of.Kind is BehindKind.Solid or BehindKind.Open ? $"{Of(of.Kind)}: {of.Name}" : of.Name;

    public static string Sides(BehindSpec of, IEnumerable<Side> holds)
    {
        Side[] sides = [.. holds.Where(s => of.Only is null || of.Only == s)];
        return sides.Length == 2 ? "both" : string.Join("", sides.Select(PlankWords.Of));
    }

    /// <summary>
    /// One crossing as a card has it: "stringer A 312 / 305" is along the forward edge and along the after one, both from the inboard end; any other edge is
    /// named.
    /// </summary>
    public static string Crossing(Plank plank, BehindCrossing crossing, LengthUnit unit)
    {
        ImmutableArray<BehindAtEdge> met = BehindAtEdge.Of(plank, crossing);
        if (met.IsEmpty)
        {
            return $"{Name(crossing.Of)} with its edge only";
        }

        // To starboard a run goes from forward to aft, to port the other way; one along the plank from its inboard end.
        BehindAtEdge[] order =
        [
            .. met.OrderBy(m =>
                m.Edge == "after edge" ? 1
                : m.Edge == "forward edge" ? -1
                : 0
            ),
        ];
        return $"{Name(crossing.Of)} {Place(order[0], "forward edge")} / {Place(order[1], "after edge")}";

        string Place(BehindAtEdge at, string usual) =>
            at.Edge is null ? "ends inside"
            : at.Edge == usual ? LengthText.PaperNumber(at.Mm, unit)
            : $"{at.Edge} {LengthText.PaperNumber(at.Mm, unit)}";
    }

    public static IEnumerable<string> OnCard(BottomPlan plan, Plank plank)
    {
        if (Crossings(plan, plank) is { Length: > 0 } crossings)
        {
            yield return $"Behind it, centres along forward / after edge from the inboard net corner: {string.Join("; ", crossings.Select(c => Crossing(plank, c, plan.Job.Units)))}.";
        }
    }

    public static IEnumerable<string> OnPattern(BottomPlan plan, Plank plank)
    {
        if (Crossings(plan, plank).Length > 0)
        {
            yield return "Dashes with dots: centre of what lies behind, through the planks square to their face; dashes beside it: its edges.";
        }
    }

    public static ImmutableArray<BehindCrossing> Crossings(BottomPlan plan, Plank plank) =>
        plan.Behind?.On(plank.Id) ?? [];
}
