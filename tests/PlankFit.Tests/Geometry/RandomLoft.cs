using CsCheck;
using PlankFit.Geometry.Primitives;
using PlankFit.Geometry.Surfaces;

namespace PlankFit.Tests.Geometry;

/// <summary>Hull-like tables by chance: five to twelve uneven stations, two to seven points a section, straight or cambered, with or without a stem apex.</summary>
internal static class RandomLoft
{
    /// <summary>What a random loft is made of; printed where a law fails.</summary>
    public sealed record Recipe(
        int Stations,
        int Points,
        bool Apex,
        double Length,
        double Beam,
        double DeadriseAft,
        double Warp,
        double Rocker,
        double Camber,
        double Offset
    )
    {
        public LoftedSurface Build()
        {
            double[] x =
            [
                .. Enumerable
                    .Range(0, Stations)
                    .Select(i => Length * Math.Pow((double)i / (Stations - 1), 1.25)),
            ];
            return Loft.Through([.. x.Select(Section)], -Vec3.UnitZ, 0.01);
        }

        private Vec3[] Section(double x)
        {
            double part = x / Length,
                fore = 1 - part,
                half = Beam * Length,
                reach = Apex ? 1 - Math.Pow(fore, 2.2) : 1 - (0.75 * Math.Pow(fore, 2.2));
            Vec3 keel = new(x, 0, Length * Rocker * Math.Pow(fore, 2.5));
            double slope = Math.Tan((DeadriseAft + (Warp * fore * fore)) * Math.PI / 180);
            Vec3 chine = new(x, half * reach, keel.Z + (half * reach * slope));
            Vec3 hollow = half * Camber * reach * reach * Vec3.UnitZ;
            return
            [
                .. Enumerable
                    .Range(0, Points)
                    .Select(j =>
                    {
                        double t = (double)j / (Points - 1);
                        return keel + (t * (chine - keel)) - (4 * t * (1 - t) * hollow);
                    }),
            ];
        }
    }

    public static readonly Gen<Recipe> Gen = CsCheck.Gen.Select(
        CsCheck.Gen.Select(CsCheck.Gen.Int[5, 12], CsCheck.Gen.Int[2, 7], CsCheck.Gen.Bool),
        CsCheck.Gen.Select(
            CsCheck.Gen.Double[3000, 9000],
            CsCheck.Gen.Double[0.10, 0.16],
            CsCheck.Gen.Double[8, 24],
            CsCheck.Gen.Double[0, 28],
            CsCheck.Gen.Double[0, 0.05],
            CsCheck.Gen.Double[-0.02, 0.04],
            CsCheck.Gen.Double[-20, 20]
        ),
        (kind, shape) =>
            new Recipe(
                kind.Item1,
                kind.Item2,
                kind.Item3,
                shape.Item1,
                shape.Item2,
                shape.Item3,
                shape.Item4,
                shape.Item5,
                shape.Item6,
                shape.Item7
            )
    );
}
