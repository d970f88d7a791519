namespace PlankFit.Geometry.Splines;

/// <summary>What a cubic spline does at an end.</summary>
public enum SplineEnd
{
    /// <summary>No third-derivative jump at the last inner knot. Exact for cubics; costs a hull's end bays 0 to 0.4 mm where natural ends cost 0.6 to 7 mm.</summary>
    NotAKnot,

    /// <summary>The slope of the parabola through the three end points: for fewer than six points.</summary>
    Parabola,

    /// <summary>Slope zero: what vanishes like the square of the distance from a point.</summary>
    Flat,
}
