using System.Collections.Immutable;
using PlankFit.Planking.Hulls;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Offsets;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Panels;

/// <summary>[[panel]]: the hull's panels besides the bottom, each between two lines of the table.</summary>
/// <param name="Lines">What each names of the table.</param>
internal sealed record PanelBinding(ImmutableArray<Panel> Panels, ImmutableArray<NamedLine> Lines)
{
    /// <summary>The panels that have a name of their own, and where they are; also those with another fault, which layers name none the less.</summary>
    public ImmutableArray<(string Name, Place At)> Named { get; init; } = [];

    /// <summary>What the panels are called, where the name itself is a fault as well.</summary>
    public ImmutableHashSet<string> Called { get; init; } = [];

    /// <summary>Some panel has no name: then no layer is told that its panel is unknown, since it may mean that one.</summary>
    public bool Nameless { get; init; }

    /// <summary>Sections of a panel are polynomials through no more points than this: its edges and two lines between.</summary>
    private const int MostBetween = 2;

    /// <summary>Words that stand for something else where a panel's name may stand.</summary>
    private static readonly string[] Taken = ["keel", "chine", "transom", "stem", "zone"];

    /// <param name="bottom">The bottom; null where [hull] does not say what it is.</param>
    public static PanelBinding Bind(ImmutableArray<TableReader> tables, Panel? bottom)
    {
        ImmutableArray<Panel>.Builder panels = ImmutableArray.CreateBuilder<Panel>();
        ImmutableArray<NamedLine>.Builder lines = ImmutableArray.CreateBuilder<NamedLine>();
        List<(string Name, Place At)> own = [];
        List<string?> called = [];
        foreach (TableReader table in tables)
        {
            string? name = table.Text(PanelKeys.Name),
                given = table.Text(PanelKeys.Letter),
                lower = table.Text(PanelKeys.Lower),
                upper = table.Text(PanelKeys.Upper);
            ImmutableArray<(string Text, Place At)> between = table.Texts(PanelKeys.Between),
                knuckles = table.Texts(PanelKeys.Knuckles);
            table.Close();
            called.Add(name);
            bool named = IsNamed(table, name, own);
            if (named)
            {
                own.Add((name!, table.At));
            }

            bool sound = named & Few(table, between) & Apart(table, lower, upper, between);
            string? letter = name is null ? null : Lettered(table, name, given, panels);
            if (lower is not null)
            {
                lines.Add(Line(table, name, "lower", lower, table.PlaceOf(PanelKeys.Lower)));
            }

            lines.AddRange(between.Select(b => Line(table, name, "between", b.Text, b.At)));
            if (upper is not null)
            {
                lines.Add(Line(table, name, "upper", upper, table.PlaceOf(PanelKeys.Upper)));
            }

            lines.AddRange(
                knuckles.Select(k =>
                    Line(table, name, KnuckleChecks.Key, k.Text, k.At) with
                    {
                        Edges = (lower, upper),
                    }
                )
            );
            if (
                sound
                && name is not null
                && letter is not null
                && lower is not null
                && upper is not null
            )
            {
                panels.Add(
                    new(name, letter, lower, upper, [.. between.Select(b => b.Text)])
                    {
                        Beside = bottom,
                    }
                );
            }
        }

        return new(panels.ToImmutable(), lines.ToImmutable())
        {
            Named = [.. own],
            Called = [.. called.OfType<string>()],
            Nameless = called.Contains(null),
        };
    }

    private static NamedLine Line(
        TableReader table,
        string? name,
        string key,
        string line,
        Place at
    ) =>
        new(key, line, at)
        {
            Table = name is null ? table.Name : $"[[panel]] {name}",
            Panel = name ?? "panel",
        };

    private static bool IsNamed(
        TableReader table,
        string? name,
        IEnumerable<(string Name, Place At)> others
    )
    {
        if (name is null)
        {
            return false;
        }

        if (name == Panel.BottomName)
        {
            table.Wrong(
                PanelKeys.Name,
                "the bottom is what [hull] keel and chine make; another panel has another name"
            );
            return false;
        }

        if (Taken.Contains(name) || others.Any(o => o.Name == name))
        {
            table.Wrong(
                PanelKeys.Name,
                Taken.Contains(name)
                    ? "is the name of an edge or of a table under [ends]; call the panel otherwise"
                    : "another panel has this name already"
            );
            return false;
        }

        return true;
    }

    /// <summary>The letter given, or the name's first in capitals.</summary>
    private static string? Lettered(
        TableReader table,
        string name,
        string? given,
        IEnumerable<Panel> panels
    )
    {
        const string accepted =
            "accepted: one capital letter, A to Z but not P or S, that no other panel has";
        string letter = given ?? name[..1].ToUpperInvariant();
        if (letter is not [>= 'A' and <= 'Z'])
        {
            if (given is null)
            {
                table.Missing(PanelKeys.Letter, $"its name does not begin with one; {accepted}");
            }
            else
            {
                table.Wrong(PanelKeys.Letter, accepted);
            }

            return null;
        }

        Panel? other = panels.FirstOrDefault(p => p.Letter == letter);
        if (other is not null || letter is "P" or "S")
        {
            string taken =
                (
                    other is null
                        ? $"its planks would be named S{letter}1-07 and P{letter}1-07, and {letter} is a side"
                        : $"its planks would be named as those of {Quoted.Of(other.Name)}, S{letter}1-07"
                ) + $"; {accepted}";
            if (given is null)
            {
                table.Missing(PanelKeys.Letter, taken);
            }
            else
            {
                table.Wrong(PanelKeys.Letter, taken);
            }

            return null;
        }

        return letter;
    }

    /// <summary>Of many lines between no fair section is promised.</summary>
    private static bool Few(TableReader table, ImmutableArray<(string Text, Place At)> between)
    {
        if (between.Length > MostBetween)
        {
            table.Faults.Error(
                between[MostBetween].At,
                $"{table.Name} between: {between.Length} lines, and a section is drawn through {MostBetween} at most, besides the edges: name those that shape it most, or make two panels"
            );
        }

        return between.Length <= MostBetween;
    }

    private static bool Apart(
        TableReader table,
        string? lower,
        string? upper,
        ImmutableArray<(string Text, Place At)> between
    )
    {
        string?[] all = [lower, .. between.Select(b => b.Text), upper];
        string? twice = all.OfType<string>()
            .GroupBy(n => n)
            .FirstOrDefault(g => g.Count() > 1)
            ?.Key;
        if (twice is not null)
        {
            table.Faults.Error(
                table.At,
                $"{table.Name}: {Quoted.Of(twice)} is named twice; lower, upper and each line between are different lines"
            );
        }

        return twice is null;
    }
}
