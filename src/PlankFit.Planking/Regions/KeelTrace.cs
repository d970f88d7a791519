using PlankFit.Geometry.Splines;

namespace PlankFit.Planking.Regions;

/// <summary>The trace of the keel's side on a parallel surface of the bottom: v as a function of u. Past where it could be followed it keeps its last v.</summary>
internal sealed class KeelTrace(CubicSpline followed)
{
    public double At(double u) => followed.At(Math.Clamp(u, followed.From, followed.To));

    /// <summary>dv/du.</summary>
    public double Slope(double u) => u < followed.From || u > followed.To ? 0 : followed.Slope(u);
}
