using System.Collections.Immutable;
using System.Globalization;
using PlankFit.Export.Words;
using PlankFit.Planking.Fastenings;
using PlankFit.Planking.Units;

namespace PlankFit.Export.Fastenings;

/// <summary>Fastenings in the words of the bench.</summary>
internal static class FasteningWords
{
    /// <summary>What it is: "screw and pad", "nail, left in", "staple through strap".</summary>
    public static string Kind(FasteningKind kind, FastenerShape shape) =>
        kind switch
        {
            FasteningKind.LeftIn => $"{Shape(shape)}, left in",
            FasteningKind.ScrewAndPad => "screw and pad",
            FasteningKind.StapleThroughStrap => "staple through strap",
            _ => "no fastening",
        };

    public static string What(FasteningUse use, FasteningKind kind, FastenerShape shape) =>
        use switch
        {
            FasteningUse.PullDown => $"pull-down, {Kind(kind, shape)}",
            FasteningUse.Vent => "vent hole",
            _ => Kind(kind, shape),
        };

    public static string Use(FasteningUse use) =>
        use switch
        {
            FasteningUse.PullDown => "pull-down",
            FasteningUse.Vent => "vent",
            _ => "into timber",
        };

    /// <summary>Several of one kind, for a count before it.</summary>
    private static string Many(FasteningUse use, FasteningKind kind, FastenerShape shape, int count)
    {
        string s = count == 1 ? "" : "s";
        return use switch
        {
            FasteningUse.Vent => $"vent hole{s}",
            FasteningUse.PullDown =>
                $"pull-down {(kind == FasteningKind.ScrewAndPad ? "screw" : "staple")}{s}",
            _ => kind switch
            {
                FasteningKind.LeftIn => $"{Shape(shape)}{s} left in",
                FasteningKind.ScrewAndPad => $"screw{s} with pad",
                _ => $"staple{s} through strap",
            },
        };
    }

    /// <summary>A length to buy by: 40 mm, 1 5/8 in.</summary>
    public static string Length(double? mm, LengthUnit unit) =>
        mm is { } length ? PlankWords.Small(length, unit) : "none will do";

    /// <summary>One line for a plank's card: what is on it by kind and length.</summary>
    public static IEnumerable<string> OnCard(PlankFastenings made, LengthUnit unit)
    {
        string[] counts =
        [
            .. Counted(made)
                .Select(g =>
                    $"{Count(g.Count)} {Many(g.Use, g.Kind, g.Shape, g.Count)}"
                    + (
                        g.Use == FasteningUse.Vent ? ""
                        : g.LengthMm is null ? " (no length will do)"
                        : $" {Length(g.LengthMm, unit)}"
                    )
                ),
        ];
        yield return counts.Length == 0
            ? "Fastenings: none."
            : $"Fastenings: {string.Join(", ", counts)}.";
        string[] without = [.. made.Short.Where(g => g.Placed == 0).Select(g => g.Backing)];
        if (without.Length > 0)
        {
            yield return $"No fastening on {string.Join(", ", without)}: no room by the rule.";
        }
    }

    /// <summary>What the marks on a pattern are.</summary>
    public static IEnumerable<string> OnPattern(PlankFastenings made)
    {
        string marks = string.Join(
            "; ",
            Counted(made)
                .Select(g => (g.Use, g.Kind, g.Shape))
                .Distinct()
                .Select(g => $"{Mark(g.Use, g.Kind)}: {What(g.Use, g.Kind, g.Shape)}")
        );
        yield return $"{marks}. Mark on the outer face, drill square to it.";
    }

    /// <summary>The sign by which a kind is known on patterns and in the fastening plan.</summary>
    public static string Mark(FasteningUse use, FasteningKind kind) =>
        (use, kind) switch
        {
            (FasteningUse.PullDown, _) => "square with a stroke across",
            (FasteningUse.Vent, _) => "two circles",
            (_, FasteningKind.LeftIn) => "filled circle",
            (_, FasteningKind.ScrewAndPad) => "circle with a cross",
            _ => "circle with a bar",
        };

    public static ImmutableArray<(
        FasteningUse Use,
        FasteningKind Kind,
        FastenerShape Shape,
        double? LengthMm,
        int Count
    )> Counted(PlankFastenings made) =>
        [
            .. made
                .Points.GroupBy(f => (f.Use, f.Kind, f.Shape, f.LengthMm))
                .OrderBy(g => g.Key.Use)
                .ThenBy(g => g.Key.LengthMm)
                .Select(g => (g.Key.Use, g.Key.Kind, g.Key.Shape, g.Key.LengthMm, g.Count())),
        ];

    public static string Count(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Shape(FastenerShape shape) => shape.ToString().ToLowerInvariant();
}
