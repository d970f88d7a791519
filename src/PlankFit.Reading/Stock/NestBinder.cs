using System.Collections.Immutable;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Stock;
using PlankFit.Planking.Units;
using PlankFit.Reading.Drafts;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Stock;

/// <summary>[nest]: the stock on hand and what may be bought, and how planks are sawn out of it.</summary>
internal static class NestBinder
{
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
        ImmutableArray<(string Text, Place At)> stock = Files(table, NestKeys.Stock),
            buy = Files(table, NestKeys.Buy);
        if (!table.Has(NestKeys.Stock) && !table.Has(NestKeys.Buy))
        {
            table.Missing(
                NestKeys.Stock,
                "the file of boards on hand, or \"buy\", the list of what a yard sells, or both"
            );
        }

        double Mm(LengthKey key) => table.LengthOrDefault(key, units);
        ImmutableArray<string> grades = [.. table.Texts(NestKeys.Grades).Select(g => g.Text)];
        NestSpec spec = usual with
        {
            KerfMm = Mm(NestKeys.Kerf),
            EdgeMm = Mm(NestKeys.Edge),
            EndMm = Mm(NestKeys.End),
            PlaneMm = Mm(NestKeys.Plane),
            ThickerMm = Mm(NestKeys.Thicker),
            ProudMm = Mm(NestKeys.Proud),
            LeastOffcutMm = Mm(NestKeys.LeastOffcut),
            LeastOffcutWidthMm = Mm(NestKeys.LeastOffcutWidth),
            TurnEndForEnd = table.YesNo(NestKeys.TurnEndForEnd),
            TurnFaceForFace = table.YesNo(NestKeys.TurnFaceForFace),
            PairsTogether = table.YesNo(NestKeys.PairsTogether),
            Grades = grades,
            MasterGrade = Grade(table, NestKeys.Masters, grades),
            LeastGrades = Least(table, layers, grades),
            Objective = table.ChoiceOrDefault(NestKeys.Objective),
            Seed = (int)table.NumberOrDefault(NestKeys.Seed),
            Seconds = table.NumberOrDefault(NestKeys.Seconds),
            Rounds = (int?)table.Number(NestKeys.Rounds),
            LeastOverhangMm = table.Length(NestKeys.LeastOverhang, units),
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
        table.Close();
        return new(spec, stock, buy);
    }

    private static ImmutableArray<(string Text, Place At)> Files(TableReader table, FilesKey key) =>
        table.Find(key)?.Value is TomlArray ? table.Texts(key)
        : table.Text(new TextKey(key.Name, key.Example, key.What)) is { } one
            ? [(one, table.PlaceOf(key))]
        : [];

    private static string? Grade(TableReader table, TextKey key, ImmutableArray<string> grades)
    {
        string? grade = table.Text(key);
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
        ImmutableDictionary<string, string>.Builder least = ImmutableDictionary.CreateBuilder<
            string,
            string
        >();
        JobTable keys = NestKeys.LeastOf(layers.OfType<PlankLayerSpec>().Select(l => l.Name));
        if (table.Table(NestKeys.Least, keys) is not { } byLayer)
        {
            return least.ToImmutable();
        }

        foreach (TextKey layer in keys.Keys.OfType<TextKey>())
        {
            if (Grade(byLayer, layer, grades) is { } grade)
            {
                least[layer.Name] = grade;
            }
        }

        byLayer.Close();
        return least.ToImmutable();
    }
}
