using System.Collections.Immutable;
using PlankFit.Planking.Wood;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;
using PlankFit.Reading.Text;

namespace PlankFit.Reading.Timber;

/// <summary>[[timber.species]]: woods that the table does not know, or that the builder knows better.</summary>
internal static class SpeciesBinder
{
    /// <summary>The woods that come with the program, those of the job among them or in their place.</summary>
    public static ImmutableArray<Species> Bind(ImmutableArray<TableReader> tables)
    {
        List<Species> woods = [.. SpeciesTable.BuiltIn];
        HashSet<string> given = new(StringComparer.Ordinal);
        foreach (TableReader table in tables)
        {
            string name = table.Text(SpeciesKeys.Name) ?? "";
            if (name.Length > 0 && !given.Add(name))
            {
                table.Wrong(SpeciesKeys.Name, "another [[timber.species]] has this name already");
            }

            Species from = Base(table, name, woods);
            Species read = Read(table, from);
            table.Close();
            int at = woods.FindIndex(w => w.Name == name);
            if (at >= 0)
            {
                woods[at] = read;
            }
            else
            {
                woods.Add(read);
            }
        }

        return [.. woods];
    }

    /// <summary>The name under that key if the table of woods has it; a fault where it has not.</summary>
    public static string? Named(TableReader table, ImmutableArray<Species> woods, TextKey key)
    {
        string? name = table.Text(key);
        if (name is null || SpeciesTable.Find(woods, name) is not null)
        {
            return name;
        }

        string? near = NearestName.Of(name, woods.Select(w => w.Name));
        table.Wrong(
            key,
            "is no species of the table"
                + (near is null ? "" : $" (did you mean \"{near}\"?)")
                + $"; there is {string.Join(", ", woods.Select(w => w.Name))}; others are given under [[timber.species]]"
        );
        return null;
    }

    private static Species Base(TableReader table, string name, List<Species> woods)
    {
        WoodKind? kind = table.Choice(SpeciesKeys.Kind);
        Species? known = woods.Find(w => w.Name == name);
        if (Named(table, [.. woods], SpeciesKeys.Like) is { } like)
        {
            known = woods.Find(w => w.Name == like)! with { Name = name, Title = name };
        }

        known ??= new(name, name, WoodKind.Solid);
        return known with { Kind = kind ?? known.Kind };
    }

    private static Species Read(TableReader table, Species known)
    {
        string source = table.Text(SpeciesKeys.From) ?? "this job";
        Sourced? Given(double? value) =>
            value is { } figure ? new(figure, SourceTag.Job, source) : null;
        Sourced? density = Given(table.Quantity(SpeciesKeys.Density)),
            modulus = Given(table.Quantity(SpeciesKeys.Modulus)),
            rupture = Given(table.Quantity(SpeciesKeys.Rupture)),
            quarter = Given(table.Number(SpeciesKeys.MovementQuarter)),
            flat = Given(table.Number(SpeciesKeys.MovementFlat)),
            radial = Given(table.Number(SpeciesKeys.ShrinkQuarter)),
            tangential = Given(table.Number(SpeciesKeys.ShrinkFlat)),
            ratio = Given(table.Number(SpeciesKeys.Ratio));
        if (ratio is not null && known.Kind != WoodKind.Plywood)
        {
            table.Wrong(
                SpeciesKeys.Ratio,
                "belongs to plywood (kind = \"plywood\"); solid wood is judged by [[limits.bend]]"
            );
        }

        return known with
        {
            Density = density ?? known.Density,
            Modulus = modulus ?? known.Modulus,
            Rupture = rupture ?? known.Rupture,
            MoveRadial = quarter ?? (radial is null ? known.MoveRadial : null),
            MoveTangential = flat ?? (tangential is null ? known.MoveTangential : null),
            ShrinkRadial = radial ?? known.ShrinkRadial,
            ShrinkTangential = tangential ?? known.ShrinkTangential,
            LeastRadiusOverThickness = ratio ?? known.LeastRadiusOverThickness,
        };
    }
}
