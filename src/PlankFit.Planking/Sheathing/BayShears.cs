using System.Collections.Immutable;
using PlankFit.Geometry.Cloth;
using PlankFit.Planking.Hulls;

namespace PlankFit.Planking.Sheathing;

/// <summary>What each bay between two stations does to the cloth, by all meshes in it.</summary>
internal static class BayShears
{
    public static ImmutableArray<BayShear> Of(ClothFace face, ClothNet net)
    {
        ImmutableArray<StationOnHull> stations = face.Hull.Stations;
        var worst = new ClothMesh?[stations.Length];
        double[] hollow = new double[stations.Length];
        foreach (ClothMesh mesh in net.OnGround)
        {
            int bay = 0;
            while (bay + 2 < stations.Length && mesh.At.U > stations[bay + 1].U)
            {
                bay++;
            }

            if (
                worst[bay] is not { } most
                || Math.Abs(mesh.ShearDegrees) > Math.Abs(most.ShearDegrees)
            )
            {
                worst[bay] = mesh;
            }

            (double first, double second) = net.ThreadCurvatures(mesh.Middle);
            hollow[bay] = Math.Max(hollow[bay], Math.Max(first, second));
        }

        return
        [
            .. Enumerable
                .Range(0, stations.Length - 1)
                .Where(i => worst[i] is not null)
                .Select(i => new BayShear(
                    stations[i].Name,
                    stations[i + 1].Name,
                    new(
                        worst[i]!.Value.ShearDegrees,
                        worst[i]!.Value.TurningDegrees,
                        worst[i]!.Value.BulgeDegrees
                    ),
                    Part(face, worst[i]!.Value),
                    hollow[i]
                )),
        ];
    }

    private static double Part(ClothFace face, ClothMesh mesh)
    {
        double low = face.Region.LowerV(mesh.At.U),
            high = face.Region.UpperV(mesh.At.U);
        return high > low ? Math.Clamp((mesh.At.V - low) / (high - low), 0, 1) : 0;
    }
}
