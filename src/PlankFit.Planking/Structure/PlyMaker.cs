using System.Collections.Immutable;
using PlankFit.Planking.Glue.Mixing;
using PlankFit.Planking.Sheathing;
using PlankFit.Planking.Structure.Laminates;
using PlankFit.Planking.Wood;

namespace PlankFit.Planking.Structure;

/// <summary>Woods and cloths as plies.</summary>
internal sealed record PlyMaker(StructureSpec Spec)
{
    /// <summary>Null where the wood's stiffness is not known.</summary>
    public PlyMaterial? Of(Species wood) =>
        wood.Modulus is { } e
            ? new(e.Value, e.Value * Spec.Wood.Across, e.Value * Spec.Wood.Shear, Spec.Wood.Poisson)
            : null;

    /// <summary>
    /// A cloth of a thickness, its usual glass content: a ply for each set of threads, all of one share, and one for its mat; the thickness is that of the layer, as
    /// the keel has it, and what is in it is glass as weighed and resin for the rest.
    /// </summary>
    /// <param name="lies">Which way its mat faces and its roll runs.</param>
    /// <returns>From the inside out.</returns>
    public ImmutableArray<Ply> Of(ClothSpec cloth, double thicknessMm, ClothLies lies)
    {
        double threads = cloth.MassGsm - cloth.MatGsm,
            mat = cloth.MatGsm;
        double inThreads = Thickness(threads, cloth.GlassContent.Usual),
            inMat = Thickness(mat, cloth.MatGlassContent.Usual),
            scale = thicknessMm / (inThreads + inMat);
        ImmutableArray<Ply>.Builder plies = ImmutableArray.CreateBuilder<Ply>();
        foreach (double degrees in cloth.DirectionsDegrees)
        {
            plies.Add(
                Ply(
                    cloth.GlassContent.Usual,
                    scale,
                    scale * inThreads / cloth.DirectionsDegrees.Length,
                    Turned(degrees + lies.RollDegrees)
                )
            );
        }

        if (inMat > 0)
        {
            plies.Insert(
                lies.MatInside ? 0 : plies.Count,
                MatPly(cloth.MatGlassContent.Usual, scale, scale * inMat)
            );
        }

        return plies.ToImmutable();
    }

    /// <summary>The same line, more than -90 and no more than 90 degrees.</summary>
    private static double Turned(double degrees)
    {
        double turned = Math.IEEERemainder(degrees, 180);
        return turned <= -90 ? turned + 180 : turned;
    }

    private static double Thickness(double gsm, double content) =>
        gsm > 0
            ? GlassInResin.ThicknessMm(
                gsm / 1000,
                content,
                GlassInResin.GlassKgPerLitre,
                EpoxyKgPerLitre
            )
            : 0;

    /// <summary>Cured epoxy, kg a litre (a figure of boat-building forums, read there).</summary>
    public const double EpoxyKgPerLitre = 1.15;

    /// <summary>A layer thicker than its glass and resin come to has the rest in resin: less glass by volume.</summary>
    private Ply Ply(double content, double scale, double thickness, double degrees)
    {
        double volume = Volume(content, scale);
        return new(
            PlyMaterial.OfFibres(
                Spec.Fibres.FibreMPa,
                FibreSpec.FibreNu,
                Spec.Fibres.ResinMPa,
                FibreSpec.ResinNu,
                volume
            ),
            thickness,
            degrees,
            Density(volume)
        );
    }

    private Ply MatPly(double content, double scale, double thickness)
    {
        double volume = Volume(content, scale),
            e =
                (FibreSpec.MatPart * Spec.Fibres.FibreMPa * volume)
                + (Spec.Fibres.ResinMPa * (1 - volume));
        const double nu = 0.33;
        return new(new(e, e, e / (2 * (1 + nu)), nu), thickness, 0, Density(volume));
    }

    private static double Volume(double content, double scale) =>
        Math.Min(
            0.7,
            GlassInResin.FibreVolume(content, GlassInResin.GlassKgPerLitre, EpoxyKgPerLitre) / scale
        );

    private static double Density(double volume) =>
        1000 * ((volume * GlassInResin.GlassKgPerLitre) + ((1 - volume) * EpoxyKgPerLitre));
}

/// <summary>How a cloth lies, as far as its plies go by it.</summary>
/// <param name="MatInside">Its mat lies to the inside, on the wood.</param>
/// <param name="RollDegrees">Of the roll's length from the line along the hull, aft, towards the chine.</param>
internal readonly record struct ClothLies(bool MatInside, double RollDegrees)
{
    public static ClothLies Of(SheathedLayer layer) =>
        new(
            layer.Spec.MatSide == Facing.ToTheWood,
            (layer.Sides[0].Courses.Along ? 0 : 90)
                + (layer.Sides[0].First is FirstLine.Straight(_, var turned) ? turned : 0)
        );
}
