using System.Buffers.Binary;
using System.Numerics;

namespace PlankFit.Hashing;

/// <summary>
/// SHA-256 as FIPS 180-4 has it (section 6.2), for bytes that come piece by piece. In managed code alone: the runtime's own asks the system for OpenSSL on Linux and
/// ends the program where there is none, and a revision is no secret that needed it.
/// </summary>
public sealed class Sha256Hash
{
    public const int SizeInBytes = 32;

    private const int Block = 64;

    /// <summary>The bits of the cube roots of the first 64 primes, behind the point (4.2.2).</summary>
    private static readonly uint[] K =
    [
        0x428a2f98,
        0x71374491,
        0xb5c0fbcf,
        0xe9b5dba5,
        0x3956c25b,
        0x59f111f1,
        0x923f82a4,
        0xab1c5ed5,
        0xd807aa98,
        0x12835b01,
        0x243185be,
        0x550c7dc3,
        0x72be5d74,
        0x80deb1fe,
        0x9bdc06a7,
        0xc19bf174,
        0xe49b69c1,
        0xefbe4786,
        0x0fc19dc6,
        0x240ca1cc,
        0x2de92c6f,
        0x4a7484aa,
        0x5cb0a9dc,
        0x76f988da,
        0x983e5152,
        0xa831c66d,
        0xb00327c8,
        0xbf597fc7,
        0xc6e00bf3,
        0xd5a79147,
        0x06ca6351,
        0x14292967,
        0x27b70a85,
        0x2e1b2138,
        0x4d2c6dfc,
        0x53380d13,
        0x650a7354,
        0x766a0abb,
        0x81c2c92e,
        0x92722c85,
        0xa2bfe8a1,
        0xa81a664b,
        0xc24b8b70,
        0xc76c51a3,
        0xd192e819,
        0xd6990624,
        0xf40e3585,
        0x106aa070,
        0x19a4c116,
        0x1e376c08,
        0x2748774c,
        0x34b0bcb5,
        0x391c0cb3,
        0x4ed8aa4a,
        0x5b9cca4f,
        0x682e6ff3,
        0x748f82ee,
        0x78a5636f,
        0x84c87814,
        0x8cc70208,
        0x90befffa,
        0xa4506ceb,
        0xbef9a3f7,
        0xc67178f2,
    ];

    private readonly byte[] waiting = new byte[Block];

    /// <summary>Those of the square roots of the first eight primes (5.3.3), and what becomes of them.</summary>
    private readonly uint[] state =
    [
        0x6a09e667,
        0xbb67ae85,
        0x3c6ef372,
        0xa54ff53a,
        0x510e527f,
        0x9b05688c,
        0x1f83d9ab,
        0x5be0cd19,
    ];
    private ulong taken;

    public static byte[] Of(ReadOnlySpan<byte> bytes)
    {
        var hash = new Sha256Hash();
        hash.Append(bytes);
        return hash.Finish();
    }

    /// <summary>Of what a stream still holds.</summary>
    public static byte[] Of(Stream stream)
    {
        var hash = new Sha256Hash();
        byte[] piece = new byte[1 << 16];
        for (int read; (read = stream.Read(piece, 0, piece.Length)) > 0; )
        {
            hash.Append(piece.AsSpan(0, read));
        }

        return hash.Finish();
    }

    /// <summary>The same in lower-case hexadecimal.</summary>
    public static string HexOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(Of(bytes));

    public void Append(ReadOnlySpan<byte> bytes)
    {
        int held = (int)(taken % Block);
        taken += (ulong)bytes.Length;
        if (held > 0)
        {
            int more = Math.Min(Block - held, bytes.Length);
            bytes[..more].CopyTo(waiting.AsSpan(held));
            bytes = bytes[more..];
            if (held + more < Block)
            {
                return;
            }

            Take(waiting);
        }

        for (; bytes.Length >= Block; bytes = bytes[Block..])
        {
            Take(bytes[..Block]);
        }

        bytes.CopyTo(waiting);
    }

    /// <summary>The hash of all that was appended; nothing may be appended after it.</summary>
    public byte[] Finish()
    {
        // A one, noughts, and in the last eight bytes of a block the length in bits (5.1.1).
        ulong bits = taken * 8;
        int held = (int)(taken % Block);
        Span<byte> end = stackalloc byte[held < Block - 8 ? Block - held : 2 * Block - held];
        end.Clear();
        end[0] = 0x80;
        BinaryPrimitives.WriteUInt64BigEndian(end[^8..], bits);
        Append(end);

        byte[] hash = new byte[SizeInBytes];
        for (int i = 0; i < state.Length; i++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(hash.AsSpan(4 * i), state[i]);
        }

        return hash;
    }

    /// <summary>One block of 64 bytes (6.2.2).</summary>
    private void Take(ReadOnlySpan<byte> block)
    {
        Span<uint> w = stackalloc uint[64];
        for (int t = 0; t < 16; t++)
        {
            w[t] = BinaryPrimitives.ReadUInt32BigEndian(block[(4 * t)..]);
        }

        for (int t = 16; t < w.Length; t++)
        {
            uint near = w[t - 2],
                far = w[t - 15];
            w[t] =
                (Turned(near, 17) ^ Turned(near, 19) ^ (near >> 10))
                + w[t - 7]
                + (Turned(far, 7) ^ Turned(far, 18) ^ (far >> 3))
                + w[t - 16];
        }

        uint a = state[0],
            b = state[1],
            c = state[2],
            d = state[3],
            e = state[4],
            f = state[5],
            g = state[6],
            h = state[7];
        // Eight rounds at once, each with the letters one further on, so that none is copied to its neighbour.
        for (int t = 0; t < w.Length; t += 8)
        {
            uint x;
            x = h + Rising(e) + Chosen(e, f, g) + K[t] + w[t];
            d += x;
            h = x + Falling(a) + Most(a, b, c);
            x = g + Rising(d) + Chosen(d, e, f) + K[t + 1] + w[t + 1];
            c += x;
            g = x + Falling(h) + Most(h, a, b);
            x = f + Rising(c) + Chosen(c, d, e) + K[t + 2] + w[t + 2];
            b += x;
            f = x + Falling(g) + Most(g, h, a);
            x = e + Rising(b) + Chosen(b, c, d) + K[t + 3] + w[t + 3];
            a += x;
            e = x + Falling(f) + Most(f, g, h);
            x = d + Rising(a) + Chosen(a, b, c) + K[t + 4] + w[t + 4];
            h += x;
            d = x + Falling(e) + Most(e, f, g);
            x = c + Rising(h) + Chosen(h, a, b) + K[t + 5] + w[t + 5];
            g += x;
            c = x + Falling(d) + Most(d, e, f);
            x = b + Rising(g) + Chosen(g, h, a) + K[t + 6] + w[t + 6];
            f += x;
            b = x + Falling(c) + Most(c, d, e);
            x = a + Rising(f) + Chosen(f, g, h) + K[t + 7] + w[t + 7];
            e += x;
            a = x + Falling(b) + Most(b, c, d);
        }

        state[0] += a;
        state[1] += b;
        state[2] += c;
        state[3] += d;
        state[4] += e;
        state[5] += f;
        state[6] += g;
        state[7] += h;
    }

    private static uint Rising(uint e) => Turned(e, 6) ^ Turned(e, 11) ^ Turned(e, 25);

    private static uint Falling(uint a) => Turned(a, 2) ^ Turned(a, 13) ^ Turned(a, 22);

    private static uint Chosen(uint e, uint f, uint g) => g ^ (e & (f ^ g));

    private static uint Most(uint a, uint b, uint c) => (a & b) | (c & (a | b));

    private static uint Turned(uint x, int by) => BitOperations.RotateRight(x, by);
}
