using System.Collections.Immutable;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Units;
using PlankFit.Reading.Keys;
using PlankFit.Reading.Tables;

namespace PlankFit.Reading.Sheathing;

/// <summary>[[cloth]]: the cloths that sheathing is cut from.</summary>
internal static class ClothBinder
{
    private static readonly PartRange OfThreads = new(0.4, 0.5, 0.55),
        OfMat = new(0.25, 0.3, 0.35);

    private const double LocksDegrees = 40,
        MatLocksDegrees = 5;

    public static ImmutableArray<ClothSpec> Bind(
        ImmutableArray<TableReader> tables,
        LengthUnit units
    )
    {
        ImmutableArray<ClothSpec>.Builder cloths = ImmutableArray.CreateBuilder<ClothSpec>();
        foreach (TableReader table in tables)
        {
            if (One(table, units) is { } cloth)
            {
                if (cloths.Any(c => c.Name == cloth.Name))
                {
                    table.Wrong(ClothKeys.Name, "another [[cloth]] has this name already");
                }

                cloths.Add(cloth);
            }

            table.Close();
        }

        return cloths.ToImmutable();
    }

    private static ClothSpec? One(TableReader table, LengthUnit units)
    {
        string? name = table.Text(ClothKeys.Name);
        ClothKind? kind = table.Choice(ClothKeys.Kind);
        double? mass = table.Quantity(ClothKeys.Mass);
        if (!table.Has(ClothKeys.Mass))
        {
            table.Missing(ClothKeys.Mass, ClothKeys.Mass.Accepted);
        }

        bool isMat = kind == ClothKind.Mat;
        double mat = table.Quantity(ClothKeys.Mat) ?? (isMat ? mass ?? 0 : 0);
        if (isMat && mat != mass)
        {
            table.Wrong(ClothKeys.Mat, "all of a mat is mat: leave it out");
        }
        else if (!isMat && mat >= mass)
        {
            table.Wrong(
                ClothKeys.Mat,
                "must be less than mass, which is of all of it: how much of that is mat"
            );
        }

        ImmutableArray<double> directions = Directions(table, kind);
        ImmutableArray<ClothRoll> rolls = Rolls(table, units);
        PartRange glass = Range(table, ClothKeys.GlassContent) ?? (isMat ? OfMat : OfThreads),
            ofMat = Range(table, ClothKeys.MatGlassContent) ?? (isMat ? glass : OfMat);
        double? locks = table.Number(ClothKeys.LocksAt);
        if (name is null || kind is not { } made || mass is not { } gsm || rolls.IsEmpty)
        {
            return null;
        }

        var cloth = new ClothSpec(name, made, gsm, directions, rolls)
        {
            MatGsm = mat,
            GlassContent = glass,
            MatGlassContent = ofMat,
            LocksAtDegrees = locks ?? LocksDegrees,
        };
        return locks is null && cloth.Weave == Weave.Stiff
            ? cloth with
            {
                LocksAtDegrees = MatLocksDegrees,
            }
            : cloth;
    }

    private static ImmutableArray<double> Directions(TableReader table, ClothKind? kind)
    {
        ImmutableArray<double>? given = table.Numbers(ClothKeys.Directions);
        if (kind == ClothKind.Mat)
        {
            table.Wrong(ClothKeys.Directions, "a mat has none: leave it out");
            return [];
        }

        return given ?? (kind == ClothKind.Woven ? [0, 90] : [45, -45]);
    }

    private static ImmutableArray<ClothRoll> Rolls(TableReader table, LengthUnit units)
    {
        ImmutableArray<TableReader> given = table.HasTable(ClothKeys.Roll)
            ? [table.InBraces(ClothKeys.Roll)]
            : table.Tables(ClothKeys.Roll);
        if (!table.Has(ClothKeys.Roll))
        {
            table.Missing(ClothKeys.Roll, "give it roll = { width = ..., length = ... }");
        }

        ImmutableArray<ClothRoll>.Builder rolls = ImmutableArray.CreateBuilder<ClothRoll>();
        foreach (TableReader roll in given)
        {
            double? width = roll.Length(ClothKeys.RollWidth, units),
                length = roll.Length(ClothKeys.RollLength, units),
                count = roll.Number(ClothKeys.RollCount),
                price = roll.Number(ClothKeys.RollPrice);
            roll.Close();
            if (width is { } w && length is { } l)
            {
                rolls.Add(new(w, l) { Count = (int?)count, Price = price });
            }
        }

        return rolls.ToImmutable();
    }

    private static PartRange? Range(TableReader table, NumbersKey key)
    {
        if (table.Numbers(key) is not { } parts)
        {
            return null;
        }

        if (parts is [var least, var usual, var most] && least <= usual && usual <= most)
        {
            return new(least, usual, most);
        }

        table.Wrong(key, key.Accepted);
        return null;
    }
}
