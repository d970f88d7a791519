using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>[nest]: the stock on hand and what may be bought, and how planks are sawn out of it.</summary>
internal static class NestBinder
{
    private static readonly (string, NestObjective)[] Objectives =
    [
        ("area", NestObjective.Area),
        ("cost", NestObjective.Cost),
    ];

    public static NestDraft? Bind(
        TableReader? table,
        LengthUnit units,
        ImmutableArray<LayerSpec> layers
    )
    {
        if (table is null)
        {
            return null;
        }

        NestSpec usual = NestSpec.Usual;
        ImmutableArray<(string Text, Place At)> stock = Files(table, "stock"),
            buy = Files(table, "buy");
        if (table.Find("stock") is null && table.Find("buy") is null)
        {
            table.Missing(
                "stock",
                "the file of boards on hand, or \"buy\", the list of what a yard sells, or both"
            );
        }

        double Length(string key, double otherwise)
        {
            double? mm = table.Length(key, units);
            if (mm < 0)
            {
                table.Wrong(key, "must not be less than 0");
            }

            return mm ?? otherwise;
        }

        ImmutableArray<string> grades = [.. table.Texts("grades").Select(g => g.Text)];
        string? masters = Grade(table, table.Text("masters"), "masters", grades);
        NestSpec spec = usual with
        {
            KerfMm = Length("kerf", usual.KerfMm),
            EdgeMm = Length("edge", usual.EdgeMm),
            EndMm = Length("end", usual.EndMm),
            PlaneMm = Length("plane", usual.PlaneMm),
            ThickerMm = Length("thicker", usual.ThickerMm),
            ProudMm = Length("proud", usual.ProudMm),
            LeastOffcutMm = Length("least-offcut", usual.LeastOffcutMm),
            LeastOffcutWidthMm = Length("least-offcut-width", usual.LeastOffcutWidthMm),
            TurnEndForEnd = table.YesNo("turn-end-for-end") ?? usual.TurnEndForEnd,
            TurnFaceForFace = table.YesNo("turn-face-for-face") ?? usual.TurnFaceForFace,
            PairsTogether = table.YesNo("pairs-together") ?? usual.PairsTogether,
            Grades = grades,
            MasterGrade = masters,
            LeastGrades = Least(table, layers, grades),
            Objective = table.Choice("objective", Objectives, required: false) ?? usual.Objective,
            Seed = Whole(table, "seed", 0, int.MaxValue) ?? usual.Seed,
            Seconds = Seconds(table) ?? usual.Seconds,
            Rounds = Whole(table, "rounds", 0, 1_000_000),
            LeastOverhangMm = table.Find("least-overhang") is null
                ? null
                : Length("least-overhang", 0),
            // An edge is left as it was ripped where glue is trusted with what is missing or over.
            Saw = usual.Saw with
            {
                EdgeMm = layers
                    .OfType<PlankLayerSpec>()
                    .Select(l => l.GapMm)
                    .DefaultIfEmpty(usual.Saw.EdgeMm)
                    .Min(),
            },
        };
        Doubts(table, spec);
        table.Close();
        return new(spec, stock, buy);
    }

    private static void Doubts(TableReader table, NestSpec spec)
    {
        if (spec.KerfMm > 10)
        {
            table.Doubtful("kerf", "more than 10 mm is a wide cut for any saw");
        }

        if (spec.ProudMm > 2)
        {
            table.Doubtful(
                "proud",
                "pieces may be so much wider than their boards: the seam will want it"
            );
        }
    }

    private static ImmutableArray<(string Text, Place At)> Files(TableReader table, string key) =>
        table.Find(key)?.Value is TomlArray ? table.Texts(key, Bounds.Files)
        : table.Text(key) is { } one ? [(one, table.PlaceOf(key))]
        : [];

    private static string? Grade(
        TableReader table,
        string? grade,
        string key,
        ImmutableArray<string> grades
    )
    {
        if (grade is null || grades.Contains(grade, StringComparer.OrdinalIgnoreCase))
        {
            return grade;
        }

        table.Wrong(
            key,
            grades.IsEmpty
                ? "name the grades first, best first: grades = [\"clear\", \"sound\"]"
                : $"is none of the grades; there is {string.Join(", ", grades.Select(Quoted.Of))}"
        );
        return null;
    }

    /// <summary>least = { outer = "clear" }: by layer.</summary>
    private static ImmutableDictionary<string, string> Least(
        TableReader table,
        ImmutableArray<LayerSpec> layers,
        ImmutableArray<string> grades
    )
    {
        var least = ImmutableDictionary.CreateBuilder<string, string>();
        if (table.Table("least", "[nest] least") is not { } byLayer)
        {
            return least.ToImmutable();
        }

        foreach (PlankLayerSpec layer in layers.OfType<PlankLayerSpec>())
        {
            if (Grade(byLayer, byLayer.Text(layer.Name), layer.Name, grades) is { } grade)
            {
                least[layer.Name] = grade;
            }
        }

        byLayer.Close();
        return least.ToImmutable();
    }

    private static int? Whole(TableReader table, string key, int least, int most)
    {
        string accepted = FormattableString.Invariant(
            $"accepted: a whole number from {least} to {most}"
        );
        double? number = table.Number(key, accepted);
        if (number is { } n && (n != Math.Floor(n) || n < least || n > most))
        {
            table.Wrong(key, accepted);
            return null;
        }

        return (int?)number;
    }

    private static double? Seconds(TableReader table)
    {
        const string Accepted = "accepted: seconds, from 0 to 86400";
        double? seconds = table.Number("time", Accepted);
        if (seconds is < 0 or > 86400)
        {
            table.Wrong("time", Accepted);
            return null;
        }

        return seconds;
    }
}
