using System.Collections.Immutable;
using PlankFit.Planking.Findings;
using PlankFit.Planking.Hulls;
using PlankFit.Planking.Layers;
using PlankFit.Planking.Units;

namespace PlankFit.Planking.Sheathing;

/// <summary>What sheathing names, against the stack, the cloths and the table.</summary>
internal static class SheathingChecks
{
    public static IEnumerable<Finding> Of(
        ImmutableArray<SheathingSpec> sheathing,
        ImmutableArray<ClothSpec> cloths,
        ImmutableArray<LayerSpec> layers,
        OffsetTable table,
        LengthUnit units
    )
    {
        var seen = new HashSet<string>();
        foreach (SheathingSpec spec in sheathing)
        {
            if (OfLayer(spec, layers) is { } wrong)
            {
                yield return Fault(spec, "layer", wrong);
            }

            if (!seen.Add(spec.Layer))
            {
                yield return Fault(
                    spec,
                    "layer",
                    $"another [[sheathing]] is about the layer '{spec.Layer}' already: a layer is one cloth; give a second cloth a [[layer]] of its own"
                );
            }

            foreach (Finding fault in OfCloth(spec, cloths, units))
            {
                yield return fault;
            }

            if (
                spec.FirstAlong is FirstLine.Point(var station, _)
                && table.Stations.All(s => s.Name != station)
            )
            {
                yield return Fault(
                    spec,
                    "first-along",
                    $"the table has no station {station}; it has {string.Join(", ", table.Stations.Select(s => s.Name))}"
                );
            }
        }
    }

    private static string? OfLayer(SheathingSpec spec, ImmutableArray<LayerSpec> layers)
    {
        string[] cloths = [.. layers.OfType<ClothLayerSpec>().Select(l => l.Name)];
        string known =
            cloths.Length == 0
                ? "the bottom's stack has none: give it a [[layer]] with kind = \"cloth\""
                : "the bottom's are " + string.Join(", ", cloths.Select(n => $"'{n}'"));
        return cloths.Contains(spec.Layer) ? null
            : layers.Any(l => l.Name == spec.Layer)
                ? $"'{spec.Layer}' is a layer of planks; sheathing is of a layer of cloth, and {known}"
            : $"the bottom has no layer of cloth '{spec.Layer}'; {known}";
    }

    private static IEnumerable<Finding> OfCloth(
        SheathingSpec spec,
        ImmutableArray<ClothSpec> cloths,
        LengthUnit units
    )
    {
        if (cloths.FirstOrDefault(c => c.Name == spec.Cloth) is not { } cloth)
        {
            yield return Fault(
                spec,
                "cloth",
                $"no [[cloth]] is called '{spec.Cloth}'; "
                    + (
                        cloths.IsEmpty
                            ? "there is none: give a [[cloth]] with name, mass and roll"
                            : "there is " + string.Join(", ", cloths.Select(c => $"'{c.Name}'"))
                    )
            );
            yield break;
        }

        string Length(double mm) => LengthText.ForPaper(mm, units);
        double least = spec.JoinLapMm + (2 * spec.ExcessMm);
        if (cloth.WidestMm <= least)
        {
            yield return Fault(
                spec,
                "cloth",
                $"the widest roll of '{cloth.Name}' is {Length(cloth.WidestMm)} wide, and lap and excess alone take {Length(least)} of every course: give less join-lap or excess, or a wider roll"
            );
        }

        if (cloth.HasMatFace && spec.MatSide is null)
        {
            yield return Fault(
                spec,
                "mat-side",
                $"the cloth '{cloth.Name}' has mat on one face: say mat-side = \"to the wood\" or \"outward\""
            );
        }

        if (!cloth.HasMatFace && spec.MatSide is not null)
        {
            yield return Fault(
                spec,
                "mat-side",
                $"the cloth '{cloth.Name}' has no mat on one face: leave mat-side out, or give the cloth's mat"
            );
        }

        if (spec.StitchSide is not null && cloth.Kind != ClothKind.Stitched)
        {
            yield return Fault(
                spec,
                "stitch-side",
                $"the cloth '{cloth.Name}' is not stitched: leave stitch-side out"
            );
        }
        else if (spec.StitchSide is not null && cloth.HasMatFace)
        {
            yield return Fault(
                spec,
                "stitch-side",
                $"the cloth '{cloth.Name}' has mat on one face, and mat-side says which way it lies: leave stitch-side out"
            );
        }
    }

    private static Finding Fault(SheathingSpec spec, string key, string message) =>
        new(Severity.Error, Subject.OfLayer(spec.Layer) with { Key = $"sheathing.{key}" }, message);
}
