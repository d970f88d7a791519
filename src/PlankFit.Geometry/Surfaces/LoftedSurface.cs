namespace PlankFit.Geometry;

/// <summary>A surface lofted through a table of points; see Loft.</summary>
public sealed class LoftedSurface : ISurface
{
    internal LoftedSurface() { }

    public SurfacePoint At(double u, double v) =>
        throw new InvalidOperationException("a lofted surface is built by Loft");
}
