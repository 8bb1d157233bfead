// Package support says what stands under a post and what it carries: the pier
// block, its bed of stone and the ground, how high block and post may stand, what
// braces a long post, and what would hold platform and building down in wind.
package support
