// Package compare counts what footings are made of and sets them beside one another
// in mass, volume, cost, labour and embodied carbon.
//
// RingQuantities and PadQuantities count the items of a stack of rings and of a
// concrete pad; other footings give their items themselves. Compare puts rates on
// every item. Rates are the user's. Only embodied carbon has defaults, each with its
// source; there is none for cost and labour, which differ from site to site. An item
// without a rate is never counted as nothing in silence: its row says so, the total
// is partial, and no difference or ratio is taken of a partial total.
//
// Embodied carbon is that of the product stage (A1 to A3 of EN 15978) and, where
// distances and a rate of transport are given, of the transport to site (A4). What
// comes after is left out and named in the notices.
//
// Sizes are in mm and unit weights in N/mm3; what is counted is in kg, m3 and m2.
package compare
