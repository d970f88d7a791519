using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace PlankFit.Planking.Structure.Laminates;

/// <summary>
/// Plies glued on each other, by classical laminate theory with bending and stretching coupled (Jones, Mechanics of Composite Materials, ch. 4, from memory): forces
/// N = A e + B k and moments M = B e + D k for each mm of width, about the middle of the stack, z from its inside out. A in N/mm, B in N, D in N mm.
/// </summary>
public sealed class Laminate
{
    private readonly Matrix<double> a = Matrix<double>.Build.Dense(3, 3),
        b = Matrix<double>.Build.Dense(3, 3),
        d = Matrix<double>.Build.Dense(3, 3);

    /// <param name="plies">From the inside out, at least one.</param>
    public Laminate(ImmutableArray<Ply> plies)
    {
        Plies = plies;
        ThicknessMm = plies.Sum(p => p.ThicknessMm);
        double z = -ThicknessMm / 2;
        foreach (Ply ply in plies)
        {
            Matrix<double> q = Turned(ply.Material, ply.Degrees);
            double top = z + ply.ThicknessMm;
            a += q * ply.ThicknessMm;
            b += q * (((top * top) - (z * z)) / 2);
            d += q * ((Math.Pow(top, 3) - Math.Pow(z, 3)) / 3);
            z = top;
        }
    }

    public ImmutableArray<Ply> Plies { get; }

    public double ThicknessMm { get; }

    public double KgPerM2 => Plies.Sum(p => p.KgPerM3 * p.ThicknessMm / 1000);

    /// <summary>Where the mass has its middle, mm from the inside; NaN where no ply has a density.</summary>
    public double CentreFromInsideMm
    {
        get
        {
            double at = 0,
                moment = 0;
            foreach (Ply ply in Plies)
            {
                moment += ply.KgPerM3 * ply.ThicknessMm * (at + (ply.ThicknessMm / 2));
                at += ply.ThicknessMm;
            }

            return moment / Plies.Sum(p => p.KgPerM3 * p.ThicknessMm);
        }
    }

    /// <summary>A_ij, its indices 1, 2 and 6 as they are written; B_ij and D_ij likewise.</summary>
    public double A(int i, int j) => a[At(i), At(j)];

    public double B(int i, int j) => b[At(i), At(j)];

    public double D(int i, int j) => d[At(i), At(j)];

    /// <summary>A strip of it along x, free to draw in, to twist and to stretch: N mm² for each mm of width.</summary>
    public double FreeStripAlong => 1 / Compliance()[3, 3];

    /// <summary>The same across, along y.</summary>
    public double FreeStripAcross => 1 / Compliance()[4, 4];

    /// <summary>A strip along x that is kept from twisting and may draw in.</summary>
    public double TwistHeldAlong
    {
        get
        {
            Matrix<double> r = Reduced();
            return r[0, 0] - (r[0, 1] * r[0, 1] / r[1, 1]);
        }
    }

    /// <summary>
    /// Between stringers that run along x: it bends across alone (about x), what lies along and its twist are held, and it may pull itself inwards: D22 less what the
    /// stretching across and the shear take out of it.
    /// </summary>
    public double BetweenStringers
    {
        get
        {
            Matrix<double> held = Matrix<double>.Build.DenseOfArray(
                new[,]
                {
                    { a[1, 1], a[1, 2] },
                    { a[1, 2], a[2, 2] },
                }
            );
            Vector<double> coupling = Vector<double>.Build.Dense([b[1, 1], b[1, 2]]);
            return d[1, 1] - coupling.DotProduct(held.Solve(coupling));
        }
    }

    /// <summary>Stretched along x in its plane, free to draw in and to shear, its bending held: MPa over its whole thickness.</summary>
    public double ModulusAlong => 1 / (a.Inverse()[0, 0] * ThicknessMm);

    /// <summary>Sheared in its plane, MPa over its whole thickness.</summary>
    public double ShearModulus => 1 / (a.Inverse()[2, 2] * ThicknessMm);

    private Matrix<double> Compliance()
    {
        Matrix<double> whole = Matrix<double>.Build.Dense(6, 6);
        whole.SetSubMatrix(0, 0, a);
        whole.SetSubMatrix(0, 3, b);
        whole.SetSubMatrix(3, 0, b);
        whole.SetSubMatrix(3, 3, d);
        return whole.Inverse();
    }

    /// <summary>D* = D - B A⁻¹ B: what bending meets where nothing pulls.</summary>
    private Matrix<double> Reduced() => d - (b * a.Inverse() * b);

    private static int At(int index) => index == 6 ? 2 : index - 1;

    private static Matrix<double> Turned(PlyMaterial m, double degrees)
    {
        (double s, double c) = Math.SinCos(degrees * Math.PI / 180);
        double s2 = s * s,
            c2 = c * c,
            both = m.Q12 + (2 * m.Q66);
        double q11 = (m.Q11 * c2 * c2) + (2 * both * s2 * c2) + (m.Q22 * s2 * s2),
            q22 = (m.Q11 * s2 * s2) + (2 * both * s2 * c2) + (m.Q22 * c2 * c2),
            q12 = ((m.Q11 + m.Q22 - (4 * m.Q66)) * s2 * c2) + (m.Q12 * ((s2 * s2) + (c2 * c2))),
            q66 =
                ((m.Q11 + m.Q22 - (2 * m.Q12) - (2 * m.Q66)) * s2 * c2)
                + (m.Q66 * ((s2 * s2) + (c2 * c2))),
            q16 =
                ((m.Q11 - m.Q12 - (2 * m.Q66)) * s * c * c2)
                + ((m.Q12 - m.Q22 + (2 * m.Q66)) * s * s2 * c),
            q26 =
                ((m.Q11 - m.Q12 - (2 * m.Q66)) * s * s2 * c)
                + ((m.Q12 - m.Q22 + (2 * m.Q66)) * s * c * c2);
        return Matrix<double>.Build.DenseOfArray(
            new[,]
            {
                { q11, q12, q16 },
                { q12, q22, q26 },
                { q16, q26, q66 },
            }
        );
    }
}
