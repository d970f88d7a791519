using System.Collections.Immutable;
using PlankFit.Export.Words;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Framing;
using PlankFit.Planking.Planks;
using PlankFit.Planking.Units;
using PlankFit.Planking.Whole;

namespace PlankFit.Export.Framing;

/// <summary>What lies behind a plank, in words.</summary>
internal static class FramingWords
{
    public static string Of(FramingKind kind) =>
        kind switch
        {
            FramingKind.Stringer => "stringer",
            FramingKind.Frame => "frame",
            FramingKind.Floor => "floor",
            FramingKind.Solid => "keep solid",
            _ => "keep open",
        };

    /// <summary>As it stands on a pattern: a place says what is asked of it.</summary>
    public static string Name(FramingSpec of) =>
        of.Kind is FramingKind.Solid or FramingKind.Open ? $"{Of(of.Kind)}: {of.Name}" : of.Name;

    /// <summary>With its side where it is on one only: "keep open: sea cock (starboard only)".</summary>
    public static string Sided(FramingSpec of) =>
        of.Only is { } only ? $"{Name(of)} ({PlankWords.Of(only)} only)" : Name(of);

    public static string Sides(FramingSpec of, IEnumerable<Side> holds)
    {
        Side[] sides = [.. holds.Where(s => of.Only is null || of.Only == s)];
        return sides.Length == 2 ? "both" : string.Join("", sides.Select(PlankWords.Of));
    }

    /// <summary>
    /// One crossing as a card has it: "stringer A 312 / 305" is along the forward edge and along the after one, both from the inboard end; any other edge is
    /// named.
    /// </summary>
    public static string Crossing(Plank plank, FramingCrossing crossing, LengthUnit unit)
    {
        ImmutableArray<FramingAtEdge> met = FramingAtEdge.Of(plank, crossing);
        if (met.IsEmpty)
        {
            return $"{Sided(crossing.Of)} with its edge only";
        }

        // To starboard a run goes from forward to aft, to port the other way; one along the plank from its inboard end.
        FramingAtEdge[] order =
        [
            .. met.OrderBy(m =>
                m.Edge == "after edge" ? 1
                : m.Edge == "forward edge" ? -1
                : 0
            ),
        ];
        return $"{Sided(crossing.Of)} {Place(order[0], "forward edge")} / {Place(order[1], "after edge")}";

        string Place(FramingAtEdge at, string usual) =>
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

    public static ImmutableArray<FramingCrossing> Crossings(BottomPlan plan, Plank plank) =>
        plan.Framing.On(plank.Id);
}
