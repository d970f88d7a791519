using System.Collections.Immutable;
using PlankFit.Planking.Wood;
using PlankFit.Reading.Text;
using PlankFit.Reading.Toml;

namespace PlankFit.Reading.Jobs;

/// <summary>[[timber.species]]: woods that the table does not know, or that the builder knows better.</summary>
internal static class SpeciesBinder
{
    private const string DensityAccepted =
        "accepted: kg a cubic metre, or a text with its unit: \"545 kg/m3\", \"34 lb/ft3\"";
    private const string StressAccepted =
        "accepted: megapascals, or a text with its unit: \"13.4 GPa\", \"85 MPa\", \"1.95 Mpsi\", \"12400 psi\"";
    private const string MovementAccepted =
        "accepted: part of the width for each percent of moisture, 0 to 0.01; usually 0.001 to 0.004";
    private const string ShrinkAccepted =
        "accepted: percent from green to oven-dry, 0 to 25; usually 2 to 11";
    private const string RatioAccepted = "accepted: greater than 0; plywood's usually 75 to 320";

    private const double MPaOfPsi = 0.006894757293168361;
    private const double KgM3OfLbFt3 = 16.01846337396014;

    /// <summary>The woods that come with the program, those of the job among them or in their place.</summary>
    public static ImmutableArray<Species> Bind(ImmutableArray<TableReader> tables)
    {
        List<Species> woods = [.. SpeciesTable.BuiltIn];
        HashSet<string> given = new(StringComparer.Ordinal);
        foreach (TableReader table in tables)
        {
            string name = table.Text("name", "the name by which layers call it") ?? "";
            if (name.Length > 0 && !given.Add(name))
            {
                table.Wrong("name", "another [[timber.species]] has this name already");
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
    public static string? Named(TableReader table, ImmutableArray<Species> woods, string key)
    {
        string? name = table.Text(key);
        if (name is null || SpeciesTable.Find(woods, name) is not null)
        {
            return name;
        }

        string? near = NearestName.Of(name, woods.Select(w => w.Name));
        table.Wrong(
            key,
            "is no wood of the table"
                + (near is null ? "" : $" (did you mean \"{near}\"?)")
                + $"; there is {string.Join(", ", woods.Select(w => w.Name))}; others are given under [[timber.species]]"
        );
        return null;
    }

    private static Species Base(TableReader table, string name, List<Species> woods)
    {
        WoodKind? kind = table.Choice(
            "kind",
            [("solid", WoodKind.Solid), ("plywood", WoodKind.Plywood)],
            required: false
        );
        Species? known = woods.Find(w => w.Name == name);
        if (Named(table, [.. woods], "like") is { } like)
        {
            known = woods.Find(w => w.Name == like)! with { Name = name, Title = name };
        }

        known ??= new(name, name, WoodKind.Solid);
        return known with { Kind = kind ?? known.Kind };
    }

    private static Species Read(TableReader table, Species known)
    {
        string source = table.Text("source") ?? "this job";
        Sourced? density = Figure("density", DensityAccepted, Weight, (20, 1500)),
            modulus = Figure("modulus", StressAccepted, Stress, (500, 40000)),
            rupture = Figure("rupture", StressAccepted, Stress, (3, 400)),
            quarter = Number(table, "movement-quarter", MovementAccepted, 0.01, source),
            flat = Number(table, "movement-flat", MovementAccepted, 0.01, source),
            radial = Number(table, "shrink-quarter", ShrinkAccepted, 25, source),
            tangential = Number(table, "shrink-flat", ShrinkAccepted, 25, source),
            ratio = Number(table, "least-radius-over-thickness", RatioAccepted, 10000, source);
        Sourced? Figure(
            string key,
            string accepted,
            (string, double)[] units,
            (double, double) likely
        ) => Measured(table, key, accepted, units, likely, source);
        if (ratio is not null && known.Kind != WoodKind.Plywood)
        {
            table.Wrong(
                "least-radius-over-thickness",
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

    private static Sourced? Number(
        TableReader table,
        string key,
        string accepted,
        double most,
        string source
    )
    {
        if (table.Number(key, accepted) is not { } value)
        {
            return null;
        }

        if (value <= 0 || value > most)
        {
            table.Wrong(key, accepted);
            return null;
        }

        return new(value, SourceTag.Job, source);
    }

    private static Sourced? Measured(
        TableReader table,
        string key,
        string accepted,
        IReadOnlyList<(string, double)> units,
        (double Least, double Most) likely,
        string source
    )
    {
        double? value = table.Find(key)?.Value is TomlString text
            ? Quantity.Read(text.Value, units) is { } read
                ? read.Number * read.Factor
                : 0
            : table.Number(key, accepted);
        if (value is not { } found)
        {
            return null;
        }

        if (found <= 0 || found > 1e6)
        {
            table.Wrong(key, accepted);
            return null;
        }

        if (found < likely.Least || found > likely.Most)
        {
            table.Doubtful(key, "is an unlikely figure for wood: is the unit right?");
        }

        return new(found, SourceTag.Job, source);
    }

    private static readonly (string, double)[] Stress =
    [
        ("MPa", 1),
        ("GPa", 1000),
        ("psi", MPaOfPsi),
        ("Mpsi", 1e6 * MPaOfPsi),
    ];

    private static readonly (string, double)[] Weight =
    [
        ("kg/m3", 1),
        ("kg/m³", 1),
        ("lb/ft3", KgM3OfLbFt3),
        ("lb/ft³", KgM3OfLbFt3),
    ];
}
